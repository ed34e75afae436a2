using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Planning.Reasons;
using EstateWater.Planning.Seasons;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Tests.Planning.Seasons;

/// <summary>A short allocation has to last to harvest; one that is not short changes nothing.</summary>
public sealed class SeasonWaterTests
{
    // From the first price that counts: below it days in heat weigh no more than others.
    private static readonly double[] RisingPrices = [0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 2.5];

    [Fact]
    public void Enough_water_gives_the_same_plan_as_no_allocation()
    {
        var with = Plan(Request(1_000_000));
        var without = Plan(Request(null));
        Assert.Equal(PlanJson.Write(without with { Water = [] }), PlanJson.Write(with with { Water = [] }));
        var season = with.Water.Single().Season!;
        Assert.Equal(0, season.PricePerMm);
        Assert.True(season.WantedM3 > 0, "the test wants a season that uses water");
        Assert.EndsWith(": enough.", season.Words.ToString(), StringComparison.Ordinal);
        Assert.False(season.IsShort);
        Assert.Null(without.Water.Single().Season);
    }

    [Fact]
    public void Demand_falls_as_water_gets_dearer()
    {
        var valves = Valves(Request(null));
        var uses = RisingPrices.Select(p => At(valves, p, double.PositiveInfinity).TotalM3).ToList();
        Assert.True(uses[0] > 0, "the test wants a season that uses water");
        Assert.All(uses.Zip(uses.Skip(1)), pair => Assert.True(pair.Second <= pair.First * 1.02, string.Join(", ", uses)));
        Assert.True(uses[^1] < 0.5 * uses[0], string.Join(", ", uses));
    }

    [Theory]
    [InlineData(200)]
    [InlineData(600)]
    public void A_season_lived_through_never_uses_more_than_there_is(double left)
    {
        var valves = Valves(Request(null));
        Assert.All(RisingPrices, price => Assert.InRange(At(valves, price, left).TotalM3, 0, left + 1e-6));
        Assert.True(At(valves, 0, left).TotalM3 > 0.95 * left, "without a price nearly all of it goes");
    }

    // The weeks to come lived by hand: each plan's first seven days are put on, and counted here from hours and flow.
    [Fact]
    public void Weekly_plans_together_never_overspend_the_allocation()
    {
        var request = Request(900, blocks: 2);
        var (used, first) = (0.0, (double?)null);
        for (var week = 0; week < 3; week++)
        {
            var plan = Plan(request);
            var water = plan.Water.Single();
            first ??= water.LeftM3 + water.PlannedM3;
            var sets = plan.Sets.Where(s => s.Start < request.AsOf.AddDays(7)).ToList();
            used += sets.Sum(s => s.Hours * s.FlowM3PerH);
            request = AWeekLater(request, sets);
        }

        // Volumes and what is left are printed to a tenth.
        Assert.True(used > 0, "the test wants weeks that use water");
        Assert.True(used <= first + 0.1, $"{used} m³ of {first}");
    }

    // Both ways round: the blocks differ in nothing but the names their random numbers come from.
    [Theory]
    [InlineData(1, 5)]
    [InlineData(5, 1)]
    public void Of_two_like_blocks_the_one_of_lower_priority_goes_without_first(int first, int second)
    {
        var request = Request(null, blocks: 2);
        var twins = request with
        {
            Valves = [.. request.Valves.Select(v => v with { Applied = [] })],
            Blocks = [Twin(request.Blocks[1], "B1", "V1", first), Twin(request.Blocks[1], "B2", "V2", second)],
        };
        var valves = Valves(twins);
        var cheap = At(valves, 0, double.PositiveInfinity).M3ByPriority;
        var dear = At(valves, 0.3, double.PositiveInfinity).M3ByPriority;
        Assert.True(dear[1] / cheap[1] < dear[5] / cheap[5], $"{dear[1]} of {cheap[1]}, {dear[5]} of {cheap[5]} m³");
    }

    [Fact]
    public void Hotter_past_years_at_ripening_ask_for_more_water_later()
    {
        var mild = Wanted(Request(1_000_000, ripeningC: 27));
        var hot = Wanted(Request(1_000_000, ripeningC: 38));
        Assert.True(hot.WantedM3 > mild.WantedM3, $"{hot.WantedM3} and {mild.WantedM3} m³");
        Assert.True(hot.KeptForRipeningM3 > mild.KeptForRipeningM3, $"{hot.KeptForRipeningM3} and {mild.KeptForRipeningM3} m³");
    }

    [Fact]
    public void A_short_season_says_what_is_left_and_what_it_would_use()
    {
        var season = Wanted(Request(1_200));
        Assert.True(season.ExpectedM3 <= 1_200 && season.ExpectedM3 < season.WantedM3, $"{season}");
        Assert.StartsWith("Left ", season.Words.ToString(), StringComparison.Ordinal);
        Assert.Contains("the rest of the season would use", season.Words.ToString(), StringComparison.Ordinal);
        Assert.True(season.IsShort);
        Assert.DoesNotContain("enough", season.Words.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(150)]
    [InlineData(400)]
    [InlineData(800)]
    [InlineData(1_600)]
    public void Of_all_prices_the_one_that_leaves_least_trouble_is_taken(double left)
    {
        var valves = Valves(Request(null));
        var season = SourceSeason.Find(left, valves, 11, TestContext.Current.CancellationToken);
        Assert.True(season.IsShort);
        Assert.All(RisingPrices.Prepend(0), price => Assert.True(season.Expected.Trouble <= At(valves, price, left).Trouble, $"{price} leaves less than {season.PricePerMm}"));
        Assert.InRange(season.Expected.TotalM3, 0, left + 1e-6);
    }

    [Theory]
    [InlineData(20, 60, 100, 180, "so all of it goes into these nights, where it spares most, and the blocks of priority 1 and 3 carry the loss.")]
    [InlineData(20, 60, 100, 50, "so 130 m³ are kept for later weeks and the blocks of priority 1 and 3 carry the loss.")]
    [InlineData(10, 85, 85, 50, "so 130 m³ are kept for later weeks and the blocks of priority 1 carry the loss.")]
    [InlineData(60, 60, 60, 50, "so 130 m³ are kept for later weeks and all blocks carry the loss alike.")]
    public void Priorities_that_lose_more_than_the_whole_are_named(double first, double third, double fifth, double plannedM3, string end)
    {
        static SeasonUse Use(double price, double first, double third, double fifth) =>
            new(price, first + third + fifth, 0, 0, new Dictionary<int, double> { [5] = fifth, [1] = first, [3] = third });
        var season = new SourceSeason { LeftM3 = 180, Wanted = Use(0, 100, 100, 100), Expected = Use(0.1, first, third, fifth) };
        Assert.EndsWith(end, SeasonWords.Of(season, plannedM3).Words.ToString(), StringComparison.Ordinal);
    }

    // Nights have room for all: hours are missing for the season's sake, and not because people were told of fewer.
    [Fact]
    public void A_valve_that_people_were_told_of_is_said_to_be_short_of_water_not_kept_to_its_week()
    {
        var request = Request(3_500, ripeningC: 40);
        var now = Plan(request with { Standing = [.. Plan(request).Sets.Select(s => new StandingSet(s.Valve, s.Start, s.Hours))] });
        var told = now.Sets.Select(s => s.Valve).ToHashSet();
        var missing = now.Unmet.Where(u => told.Contains(u.Valve!)).ToList();
        Assert.NotEmpty(missing);
        Assert.All(missing, u => Assert.StartsWith("the season's water of dam is short", u.Reason.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void The_plan_document_keeps_its_form() =>
        Assert.DoesNotContain("season", PlanJson.Write(Plan(Request(1_000_000)) with { Blocks = [], Unmet = [] }), StringComparison.OrdinalIgnoreCase);

    private static Plan Plan(PlanRequest request) => Planner.Plan(request, TestContext.Current.CancellationToken);

    private static SeasonWater Wanted(PlanRequest request) => Plan(request).Water.Single().Season!;

    private static IReadOnlyList<IReadOnlyList<BlockSeason>> Valves(PlanRequest request) =>
        EstateSeason.BlocksByValve(Planner.Fit(request, TestContext.Current.CancellationToken), "dam", TestContext.Current.CancellationToken);

    private static SeasonUse At(IReadOnlyList<IReadOnlyList<BlockSeason>> valves, double price, double left) =>
        SeasonTrial.At(valves, 11, price, left, TestContext.Current.CancellationToken);

    private static PlanBlock Twin(PlanBlock block, string code, string valve, int priority) => block with { Code = code, ValveCode = valve, Priority = priority };

    /// <summary>The small estate with three more summers on record, mild or hot where this one's ripening lies.</summary>
    private static PlanRequest Request(double? allocationM3, int blocks = 3, double ripeningC = 33)
    {
        var request = SmallEstate.Request(blocks, allocationM3: allocationM3);
        var station = request.Stations.Single();
        var record = Enumerable.Range(0, 3 * 365).Select(d => station.Days[0].Date.AddDays(d - (3 * 365)))
            .Select(date => Day(date, date.Month is 2 or 3 ? ripeningC : date.Month is 11 or 12 or 1 ? 30 : 20));
        return request with { Stations = [station with { Days = [.. record, .. station.Days] }] };
    }

    private static PlanRequest AWeekLater(PlanRequest request, List<PlannedSet> sets)
    {
        var station = request.Stations.Single();
        var first = station.Days[^1].Date.AddDays(1);
        var asOf = request.AsOf.AddDays(7);
        return request with
        {
            AsOf = asOf,
            Stations = [station with { Days = [.. station.Days, .. Enumerable.Range(0, 7).Select(d => Day(first.AddDays(d), 33))], Forecasts = [] }],
            Valves = [.. request.Valves.Select(v => v with { Applied = [.. v.Applied, .. sets.Where(s => s.Valve == v.Code).Select(s => new AppliedSet(s.Start, s.Hours, s.Hours * s.FlowM3PerH))] })],
        };
    }

    private static DailyWeather Day(DateOnly date, double tMaxC) => new(date, tMaxC, tMaxC - 15, 85, 30, 2, 27, 0);
}
