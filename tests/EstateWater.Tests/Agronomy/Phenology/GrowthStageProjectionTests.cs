using CsCheck;
using EstateWater.Agronomy.Phenology;

namespace EstateWater.Tests.Phenology;

public sealed class GrowthStageProjectionTests
{
    [Theory]
    [InlineData("2025-06-30", 45, 2025)]
    [InlineData("2025-12-31", 45, 2025)]
    [InlineData("2025-06-30", -34, 2025)]
    [InlineData("2025-07-01", -34, 2026)]
    [InlineData("2025-12-31", 0, 2025)]
    public void A_date_belongs_to_the_season_of_its_harvest(string date, double latitude, int year)
    {
        var day = DateOnly.ParseExact(date, "yyyy-MM-dd");

        Assert.Equal(year, Season.YearOf(day, latitude));
        Assert.InRange(day, Season.FirstDay(year, latitude), Season.LastDay(year, latitude));
    }

    [Fact]
    public void Without_anything_known_it_follows_the_calendar_of_the_hemisphere()
    {
        var north = new GrowthStageProjection(45, []);
        var south = new GrowthStageProjection(-34, []);

        Assert.Equal(1, north.At(new DateOnly(2025, 1, 15)));
        Assert.Equal(47, north.At(new DateOnly(2025, 12, 31)));
        Assert.InRange(north.At(new DateOnly(2025, 6, 10)), 19, 27);
        Assert.InRange(south.At(new DateOnly(2024, 12, 10)), 19, 27);
        Assert.Equal(1, south.At(new DateOnly(2025, 7, 1)));
        // Six months apart: the southern sum starts 181 days after the northern one.
        Assert.Equal(north.At(new DateOnly(2025, 8, 8)), south.At(new DateOnly(2025, 8, 8).AddDays(181)), 1e-9);
    }

    // GFV: at 20 °C Chardonnay's 1217 °C·d are full on the 61st day from 1 March, its 2547 on the 128th.
    [Fact]
    public void With_weather_full_bloom_and_veraison_stand_where_the_thermal_requirement_is_met()
    {
        var weather = Enumerable.Range(0, 365).ToDictionary(i => new DateOnly(2025, 1, 1).AddDays(i), _ => 20.0);

        var projection = new GrowthStageProjection(45, [], weather, GrowthStageCurve.For(VarietyHeatNeeds.Of("Chardonnay")));

        Assert.Equal(new DateOnly(2025, 4, 30), projection.DateOf(23, 2025));
        Assert.Equal(new DateOnly(2025, 7, 6), projection.DateOf(35, 2025));
    }

    [Fact]
    public void Passes_through_what_was_observed_and_carries_the_difference_on()
    {
        var veraison = new DateOnly(2025, 7, 20);
        var unseen = new GrowthStageProjection(45, []);

        var seen = new GrowthStageProjection(45, [(new DateOnly(2025, 4, 1), 4), (veraison, 35)]);

        Assert.Equal(4, seen.At(new DateOnly(2025, 4, 1)), 1e-9);
        Assert.Equal(35, seen.At(veraison), 1e-9);
        Assert.Equal(veraison, seen.DateOf(35, 2025));
        Assert.True(seen.At(veraison.AddDays(20)) > unseen.At(veraison.AddDays(20)));
        // The next season knows nothing of this one's earliness.
        Assert.Equal(unseen.At(new DateOnly(2026, 7, 20)), seen.At(new DateOnly(2026, 7, 20)));
    }

    [Fact]
    public void Goes_from_harvest_to_leaf_fall_by_the_calendar_whatever_the_heat()
    {
        var ripe = new DateOnly(2025, 9, 1);
        (DateOnly, double)[] observed = [(ripe, 38)];
        var hot = Enumerable.Range(0, 365).ToDictionary(i => new DateOnly(2025, 1, 1).AddDays(i), _ => 30.0);

        Assert.Equal(43, new GrowthStageProjection(45, observed, hot).At(ripe.AddDays(45)), 1e-9);
        Assert.Equal(47, new GrowthStageProjection(45, observed).At(ripe.AddDays(75)), 1e-9);
    }

    [Fact]
    public void Contradicting_observations_are_pooled()
    {
        var day = new DateOnly(2025, 6, 10);

        var projection = new GrowthStageProjection(45, [(day, 26), (day.AddDays(7), 24), (day.AddDays(30), 31)]);

        Assert.Equal(25, projection.At(day), 1e-9);
        Assert.Equal(25, projection.At(day.AddDays(7)), 1e-9);
        Assert.Equal(31, projection.At(day.AddDays(30)), 1e-9);
    }

    [Fact]
    public void Never_falls_within_a_season_and_stays_within_1_to_47()
    {
        var observation = Gen.Select(Gen.Int[0, 364], Gen.Double[1, 47], (day, el) => (new DateOnly(2024, 7, 1).AddDays(day), el));
        var weather = Gen.Double[-5, 30].Array[365];
        Gen.Select(observation.Array[0, 6], weather, Gen.Bool, Gen.Int[0, 364]).Sample((observed, means, southern, known) =>
        {
            var from = new DateOnly(2024, 7, 1);
            var byDate = means.Take(known).Select((mean, i) => (from.AddDays(i), mean)).ToDictionary(p => p.Item1, p => p.mean);
            var projection = new GrowthStageProjection(southern ? -34 : 45, observed, byDate);
            var first = southern ? from : new DateOnly(2025, 1, 1);
            var stages = Enumerable.Range(0, 365).Select(i => projection.At(first.AddDays(i))).ToList();
            return stages.Zip(stages.Skip(1)).All(p => p.Second >= p.First - 1e-9) && stages.TrueForAll(s => s is >= 1 and <= 47);
        });
    }

    [Fact]
    public void Curve_goes_there_and_back() =>
        Gen.Double[1, 47].Sample(el =>
        {
            var curve = GrowthStageCurve.For(VarietyHeatNeeds.Of("Merlot"));
            return Math.Abs(curve.StageAt(curve.ProgressAt(el)) - el) < 1e-9;
        });

    [Fact]
    public void A_curve_that_does_not_rise_is_refused()
    {
        GrowthStagePoint[] falling = [new(1, 0, 0), new(23, 1200, 100), new(35, 1100, 160), new(47, 4000, 270)];

        Assert.Throws<ArgumentException>(() => new GrowthStageCurve(falling));
        Assert.Throws<ArgumentException>(() => new GrowthStageCurve([new(4, 0, 0), new(47, 4000, 270)]));
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(47.5)]
    [InlineData(double.NaN)]
    public void A_stage_that_does_not_exist_is_refused_by_name(double elStage)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new GrowthStageProjection(45, [(new DateOnly(2025, 6, 1), elStage)]));

        Assert.Equal("ElStage", error.ParamName);
        Assert.Contains("1 to 47", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Stages_are_named_up_to_the_next()
    {
        Assert.Equal("Budburst", GrowthStages.NameOf(4));
        Assert.Equal("Flowering begins", GrowthStages.NameOf(19.9));
        Assert.Equal("Veraison", GrowthStages.NameOf(35));
        Assert.Equal(GrowthStages.All.Select(s => s.ElStage).Order(), GrowthStages.All.Select(s => s.ElStage));
        Assert.Equal((GrowthStages.First, GrowthStages.Last), (GrowthStages.All[0].ElStage, GrowthStages.All[^1].ElStage));
    }
}
