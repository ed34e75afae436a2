using System.Globalization;
using EstateWater.Agronomy.WaterStatus;
using static EstateWater.Agronomy.WaterStatus.FindingSeverity;
using static EstateWater.Agronomy.WaterStatus.ReadingCheck;

namespace EstateWater.Tests.WaterStatus;

public sealed class ReadingSetChecksTests
{
    private static readonly DateTimeOffset SolarNoon = new(2025, 1, 14, 12, 50, 0, TimeSpan.FromHours(2));
    private static readonly double[] SoundTensions = [1.12, 1.05, 1.21, 1.09, 1.14, 1.18];

    private static LeafFact[] Set(WaterPotentialMeasure measure = WaterPotentialMeasure.Leaf, Func<LeafFact, int, LeafFact>? change = null) =>
    [
        .. SoundTensions.Select((t, i) => new LeafFact(
            SolarNoon.AddMinutes(-10 + (3 * i)), measure, t, LeafExposure.Sun, measure == WaterPotentialMeasure.Stem ? 60 : 0, 15, "A", $"v{i}"))
            .Select(change ?? ((leaf, _) => leaf)),
    ];

    private static IReadOnlyList<ReadingFinding> Check(LeafFact[] leaves, PreviousReadingSet? previous = null, double? baseline = null) =>
        ReadingSetChecks.Of(leaves, new ReadingSetContext { SolarNoon = SolarNoon, Previous = previous, BaselineTensionMpa = baseline });

    [Fact]
    public void A_sound_set_has_no_finding()
    {
        var lastWeek = new PreviousReadingSet(SolarNoon.AddDays(-7).AddMinutes(20), 0.95);
        Assert.Empty(Check(Set(), lastWeek, baseline: 0.65));
        Assert.Empty(Check(Set(WaterPotentialMeasure.Stem), lastWeek, baseline: 0.45));
    }

    public static TheoryData<string, ReadingCheck, FindingSeverity, Func<LeafFact, int, LeafFact>> LeafFaults => new()
    {
        { "leaf, 1 h 40 min late", OutsideWindow, Doubtful, (l, _) => l with { TakenAt = SolarNoon.AddMinutes(100) } },
        { "leaf, 75 min early", OutsideWindow, Doubtful, (l, _) => l with { TakenAt = SolarNoon.AddMinutes(-75) } },
        { "leaf, 3 h late", OutsideWindow, Reject, (l, _) => l with { TakenAt = SolarNoon.AddHours(3) } },
        { "leaf, 2 h early", OutsideWindow, Reject, (l, _) => l with { TakenAt = SolarNoon.AddHours(-2) } },
        { "leaf, shade", ShadedLeaf, Doubtful, (l, i) => i == 2 ? l with { Exposure = LeafExposure.Shade } : l },
        { "leaf, 45 s", DelayTooLong, Note, (l, i) => i == 2 ? l with { DelayS = 45 } : l },
        { "leaf, 2 min", DelayTooLong, Reject, (l, i) => i == 2 ? l with { DelayS = 120 } : l },
        { "leaf, wide", UnusualSpread, Doubtful, (l, i) => l with { TensionMpa = 0.8 + (0.15 * i) } },
        { "leaf, alike", NoSpread, Doubtful, (l, _) => l with { TensionMpa = 1.13 } },
        { "leaf, one off", OutlierLeaf, Doubtful, (l, i) => i == 2 ? l with { TensionMpa = 1.65 } : l },
        { "leaf, fault", OutOfRange, Reject, (l, i) => i == 2 ? l with { TensionMpa = 3.1 } : l },
        { "leaf, whole bars", RoundedToWholeBars, Note, (l, i) => l with { TensionMpa = i % 2 == 0 ? 1.1 : 1.2 } },
        { "leaf, pair apart", LeavesOfAVineDiffer, Note, (l, i) => i is 1 or 2 ? l with { Vine = "one" } : l },
        { "stem, 8 min", BaggedTooShort, Reject, (l, i) => i == 2 ? l with { BaggedMin = 8 } : l },
        { "stem, 12 min", BaggedTooShort, Note, (l, i) => i == 2 ? l with { BaggedMin = 12 } : l },
        { "stem, not noted", BagTimeUnknown, Note, (l, i) => i == 2 ? l with { BaggedMin = null } : l },
        { "stem, wide", UnusualSpread, Doubtful, (l, i) => l with { TensionMpa = 0.8 + (0.09 * i) } },
    };

    [Theory]
    [MemberData(nameof(LeafFaults))]
    public void Names_what_is_wrong_with_the_leaves(string fault, ReadingCheck code, FindingSeverity severity, Func<LeafFact, int, LeafFact> change)
    {
        var measure = fault.StartsWith("stem", StringComparison.Ordinal) ? WaterPotentialMeasure.Stem : WaterPotentialMeasure.Leaf;
        var found = Check(Set(measure, change));
        Assert.Contains(found, f => f.Code == code && f.Severity == severity && f.Words.ToString().Length > 10);
        Assert.All(found, f => Assert.True(f.Code == code || f.Code is OutlierLeaf or UnusualSpread, $"{fault}: also {f.Code}"));
    }

    [Fact]
    public void Fifteen_minutes_in_the_bag_is_enough() =>
        Assert.Empty(Check(Set(WaterPotentialMeasure.Stem, (l, _) => l with { BaggedMin = 15 })));

    [Fact]
    public void A_bagged_leaf_may_wait_a_minute_and_a_little_longer()
    {
        Assert.Empty(Check(Set(WaterPotentialMeasure.Stem, (l, _) => l with { DelayS = 55 })));
        Assert.Equal(Note, Assert.Single(Check(Set(WaterPotentialMeasure.Stem, (l, _) => l with { DelayS = 80 }))).Severity);
    }

    [Fact]
    public void Too_few_leaves_are_counted() =>
        Assert.Equal("Only 2 leaves; read at least 3.", Assert.Single(Check(Set()[..2])).Words);

    [Fact]
    public void Another_time_of_day_than_last_week_is_told_with_its_direction()
    {
        var finding = Assert.Single(Check(Set(), new PreviousReadingSet(SolarNoon.AddDays(-7).AddMinutes(-130), 1.0)));
        Assert.Equal(OtherTimeThanBefore, finding.Code);
        Assert.StartsWith("Read 2 h later in the day", finding.Words.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_of_the_clocks_is_not_another_time_of_day()
    {
        // The same instant of the day under two offsets.
        var previous = new PreviousReadingSet(SolarNoon.AddDays(-7).ToOffset(TimeSpan.FromHours(1)), 1.0);
        Assert.Empty(Check(Set(), previous));
    }

    [Fact]
    public void A_jump_since_the_last_set_and_a_set_wetter_than_the_baseline_are_found()
    {
        Assert.Equal(Jump, Assert.Single(Check(Set(), new PreviousReadingSet(SolarNoon.AddDays(-7), 0.55))).Code);
        Assert.Equal(WetterThanBaseline, Assert.Single(Check(Set(), baseline: 1.35)).Code);
    }

    [Fact]
    public void Predawn_ends_at_sunrise()
    {
        var sunrise = SolarNoon.AddHours(-7);
        var leaves = Set(WaterPotentialMeasure.Predawn, (l, i) => l with { TensionMpa = 0.3 + (0.01 * i), TakenAt = sunrise.AddMinutes(-20 + (5 * i)) });
        var context = new ReadingSetContext { SolarNoon = SolarNoon, Sunrise = sunrise };
        Assert.Equal("1 leaf read after sunrise: not predawn any more.", Assert.Single(ReadingSetChecks.Of(leaves, context)).Words);
        Assert.Empty(ReadingSetChecks.Of(leaves[..4], context));
    }

    [Fact]
    public void Mixed_measures_are_refused_before_anything_is_averaged() =>
        Assert.Equal(MixedMeasures, Assert.Single(Check([.. Set(), .. Set(WaterPotentialMeasure.Stem)])).Code);

    [Fact]
    public void The_gravest_comes_first()
    {
        var severities = Check(Set(change: (l, i) => l with { TakenAt = SolarNoon.AddHours(3), Exposure = LeafExposure.Shade, TensionMpa = i % 2 == 0 ? 1.1 : 1.2 })).Select(f => f.Severity).ToArray();
        Assert.Equal([Reject, Doubtful, Note], severities);
    }

    [Fact]
    public void Words_are_the_same_in_every_culture()
    {
        var here = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            var words = string.Join(' ', Check(Set(change: (l, i) => i == 2 ? l with { TensionMpa = 3.14, DelayS = 45 } : l)).Select(f => f.Words));
            Assert.Contains("31.4 bar", words, StringComparison.Ordinal);
            Assert.DoesNotContain("31,4", words, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = here;
        }
    }
}
