using EstateWater.Data.Model;
using EstateWater.Planning.Accuracy;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Tests.Web.Accuracy;

/// <summary>Two blocks with weekly sets of 9, 10, 11 and 12 bar, 23, 16, 9 and 2 days ago.</summary>
public sealed class HindcastTests
{
    private static readonly EstateContents Estate = StoredEstate.Contents;

    [Theory]
    [InlineData(1, new[] { -16, -9, -2 })]
    [InlineData(3, new[] { -16, -9, -2 })]
    [InlineData(7, new[] { -9, -2 })] // Seven days before the second set, the first was not read yet: it is read at one in the afternoon.
    [InlineData(10, new[] { -9, -2 })]
    public void Every_set_is_held_whose_block_had_been_read_by_that_morning(int lead, int[] daysAhead)
    {
        var held = Run(Estate, [lead]);
        Assert.Equal(daysAhead.SelectMany(day => new[] { ("B1", Day(day)), ("B2", Day(day)) }), held.Select(h => (h.Block, h.Date)));
        Assert.All(held, h => Assert.Equal(lead, h.LeadDays));
    }

    [Fact]
    public void The_rivals_are_the_last_set_and_the_line_through_three()
    {
        var nearest = Run(Estate, [1]).Where(h => h.Block == "B1").ToList();
        Assert.Equal([10, 11, 12], nearest.Select(h => Math.Round(h.ReadBar, 9)));
        Assert.Equal([9, 10, 11], nearest.Select(h => Math.Round(h.NoChangeBar, 9)));
        // The sets climb by a bar a week, so the line through 9, 10 and 11 meets the 12.
        Assert.Equal([null, null, 12.0], nearest.Select(h => h.StraightLineBar is { } line ? Math.Round(line, 9) : (double?)null));
        // A week before, the set of that same day was not read yet.
        Assert.Equal([9, 10], Run(Estate, [7]).Where(h => h.Block == "B1").Select(h => Math.Round(h.NoChangeBar, 9)));
    }

    [Fact]
    public void A_line_is_not_drawn_on_through_a_winter()
    {
        var lastYear = Estate.ChamberReadings.Select(r => r with { TakenAt = r.TakenAt.AddDays(-364) });
        var held = Run(Estate with { ChamberReadings = [.. lastYear, .. Estate.ChamberReadings.Where(r => r.TakenAt >= SmallEstate.AsOf.AddDays(-10))] }, [1]);
        Assert.All(held.Where(h => h.Date > Day(-30)), h => Assert.Null(h.StraightLineBar));
    }

    [Fact]
    public void Nothing_that_came_after_the_morning_changes_what_it_said()
    {
        var held = Until(Day(-9), Run(Estate, AccuracyReport.Leads));
        var later = Estate with
        {
            ChamberReadings = [.. Estate.ChamberReadings.Where(r => r.TakenAt < At(-9, 23)), .. Estate.ChamberReadings.Where(r => r.TakenAt > At(-9, 23)).Select(r => r with { TensionBar = 25 })],
            Weather = [.. Estate.Weather.Select(w => w.Date < Day(-10) ? w : w with { TMaxC = 45, RhMinPct = 5, RainMm = 30 })],
            Forecasts = [.. Estate.Forecasts, .. Estate.Forecasts.Select(f => f with { IssuedAt = At(-10, 7), Date = f.Date.AddDays(-10), TMaxC = 47 })],
            Stages = [.. Estate.Stages, new StageObservation { BlockCode = "B1", Date = Day(-10), ElStage = 38 }],
            SoilMoistures = [new SoilMoisture { BlockCode = "B1", Date = Day(-10), Tube = "T1", DepthCm = 40, Count = 1000, StandardCount = 12000 }],
            CanopyVisits = [new CanopyVisit { BlockCode = "B1", Date = Day(-10), ShadedFraction = 0.9 }],
        };

        // The mornings 1 to 10 days before the sets of 9 and 16 days ago are the 10th day ago and earlier; rounds of that very day come after its morning.
        Assert.NotEmpty(held);
        Assert.Equal(held, Until(Day(-9), Run(later, AccuracyReport.Leads)));
    }

    [Fact]
    public void What_was_known_by_the_morning_does_change_what_it_said()
    {
        var hot = Estate with { Weather = [.. Estate.Weather.Select(w => w.Date < Day(-13) ? w : w with { TMaxC = 45, RhMinPct = 5 })] };
        Assert.NotEqual(Until(Day(-9), Run(Estate, [1])), Until(Day(-9), Run(hot, [1])));
    }

    [Fact]
    public void Water_that_was_applied_on_the_way_counts()
    {
        // Ten days before the last set the estate does not know of the set that is run in between, but the outlook is held with it.
        var watered = Estate with { AppliedWaters = [.. Estate.AppliedWaters, new AppliedWater { ValveCode = "V2", StartedAt = At(-8, 22), Hours = 12 }] };
        var (dry, wet) = (Last(Run(Estate, [10]), "B2"), Last(Run(watered, [10]), "B2"));
        Assert.True(wet.Expected.P50 < dry.Expected.P50, $"{wet.Expected} {dry.Expected}");
        Assert.Equal(dry.NoChangeBar, wet.NoChangeBar);
    }

    [Fact]
    public void One_fit_for_all_leads_gives_what_separate_fits_give()
    {
        var progress = new Heard();
        var memory = new HindcastMemory();
        var together = Run(Estate, AccuracyReport.Leads, memory, progress);
        Assert.Equal(AccuracyReport.Leads.SelectMany(lead => Run(Estate, [lead])), together);
        // 1, 3, 7 and 10 days before the 2nd, 9th and 16th day ago: the 3rd, 5th, 9th, 10th, 12th, 16th, 17th and 19th day ago, for those that saw a set.
        Assert.Equal(8, memory.Learnt);
        Assert.Equal(Enumerable.Range(0, 9).Select(done => new HindcastProgress(done, 8)), progress.Values);
    }

    [Fact]
    public void Several_at_once_give_the_same() =>
        Assert.Equal(Run(Estate, AccuracyReport.Leads), Run(Estate, AccuracyReport.Leads, parallelism: 4));

    [Fact]
    public void A_new_reading_asks_for_its_own_mornings_alone_and_remembers_rightly()
    {
        var memory = new HindcastMemory();
        Run(Estate with { ChamberReadings = [.. Estate.ChamberReadings.Where(r => r.TakenAt < At(-2, 0))] }, AccuracyReport.Leads, memory);
        // 1 and 3 days before the 16th, and all leads before the 9th day ago.
        Assert.Equal(5, memory.Learnt);
        var remembered = Run(Estate, AccuracyReport.Leads, memory);
        Assert.Equal(Run(Estate, AccuracyReport.Leads), remembered);
        Assert.Equal(5 + 4, memory.Learnt);
        Run(Estate, AccuracyReport.Leads, memory);
        Assert.Equal(5 + 4, memory.Learnt);
    }

    [Fact]
    public void A_corrected_reading_is_not_remembered_as_it_was()
    {
        var memory = new HindcastMemory();
        var before = Run(Estate, AccuracyReport.Leads, memory);
        var corrected = Estate with { ChamberReadings = [.. Estate.ChamberReadings.Select(r => r.TakenAt < At(-15, 0) ? r with { TensionBar = r.TensionBar + 2 } : r)] };
        var after = Run(corrected, AccuracyReport.Leads, memory);
        Assert.NotEqual(before, after);
        Assert.Equal(Run(corrected, AccuracyReport.Leads), after);
    }

    [Fact]
    public void A_stopped_run_ends()
    {
        using var stop = new CancellationTokenSource();
        var heard = new Heard { Then = _ => stop.Cancel() };
        Assert.ThrowsAny<OperationCanceledException>(() => Hindcast.Run(
            (asOf, days) => PastKnowledge.At(Estate, asOf, days), PlanRequests.From(Estate, SmallEstate.AsOf), [7], null, heard, 1, stop.Token));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(31, 1)]
    [InlineData(7, 0)]
    [InlineData(7, 5)]
    public void Leads_and_parallelism_outside_their_range_are_refused(int lead, int parallelism) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Run(Estate, [lead], parallelism: parallelism));

    private static IReadOnlyList<HeldAgainst> Run(
        EstateContents contents, IReadOnlyList<int> leads, HindcastMemory? memory = null, IProgress<HindcastProgress>? progress = null, int parallelism = 1) =>
        Hindcast.Run(
            (asOf, days) => PastKnowledge.At(contents, asOf, days),
            PlanRequests.From(contents, SmallEstate.AsOf),
            leads,
            memory,
            progress,
            parallelism,
            TestContext.Current.CancellationToken);

    private static List<HeldAgainst> Until(DateOnly last, IEnumerable<HeldAgainst> held) => [.. held.Where(h => h.Date <= last)];

    private static HeldAgainst Last(IReadOnlyList<HeldAgainst> held, string block) => held.Last(h => h.Block == block);

    private static DateOnly Day(int ahead) => SmallEstate.Today.AddDays(ahead);

    private static DateTimeOffset At(int ahead, int hour) => new(Day(ahead).ToDateTime(new TimeOnly(hour, 0)), TimeSpan.FromHours(2));

    private sealed class Heard : IProgress<HindcastProgress>
    {
        public List<HindcastProgress> Values { get; } = [];

        public Action<HindcastProgress> Then { get; init; } = _ => { };

        public void Report(HindcastProgress value)
        {
            Values.Add(value);
            Then(value);
        }
    }
}
