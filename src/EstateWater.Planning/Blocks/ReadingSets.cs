using EstateWater.Agronomy.Sun;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Blocks;

/// <summary>A block's leaves of one measure on one day, with their statistics and what is doubtful.</summary>
public sealed record ReadingSet
{
    /// <summary>The local day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Which water potential.</summary>
    public required WaterPotentialMeasure Measure { get; init; }

    /// <summary>When the first leaf was read.</summary>
    public required DateTimeOffset TakenAt { get; init; }

    /// <summary>The leaves, in time order.</summary>
    public required IReadOnlyList<LeafFact> Leaves { get; init; }

    /// <summary>Mean, spread and interval.</summary>
    public required ReadingSetStatistics Statistics { get; init; }

    /// <summary>What is doubtful.</summary>
    public required IReadOnlyList<ReadingFinding> Findings { get; init; }

    /// <summary>Whether a check says that the set should be read again.</summary>
    public bool IsDoubtful => Findings.Any(f => f.Severity != FindingSeverity.Note);
}

/// <summary>Gathers leaves into sets.</summary>
public static class ReadingSets
{
    /// <summary>The sets of a block, in time order.</summary>
    /// <param name="block">Its leaves.</param>
    /// <param name="zone">The estate's zone, which decides the day.</param>
    /// <param name="vpdKpaAt">Vapour pressure deficit near solar noon of a day, where known; null leaves out the check against the baseline. [kPa]</param>
    public static IReadOnlyList<ReadingSet> Of(PlanBlock block, TimeZoneInfo zone, Func<DateOnly, double?>? vpdKpaAt = null)
    {
        var sets = new List<ReadingSet>();
        var previous = new Dictionary<WaterPotentialMeasure, PreviousReadingSet>();
        var groups = block.Readings
            .GroupBy(r => (Date: DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(r.TakenAt, zone).DateTime), r.Measure))
            .OrderBy(g => g.Key.Date).ThenBy(g => g.Key.Measure);
        foreach (var group in groups)
        {
            var leaves = group.OrderBy(r => r.TakenAt).ThenBy(r => r.Group, StringComparer.Ordinal).ThenBy(r => r.Vine, StringComparer.Ordinal).ThenBy(r => r.TensionBar)
                .Select(r => new LeafFact(r.TakenAt, r.Measure, r.TensionBar / Conversions.BarPerMegapascal, r.Exposure, r.BaggedMin, r.DelayS, r.Group, r.Vine))
                .ToList();
            var sun = SolarDay.For(group.Key.Date, block.LatitudeDegrees, block.LongitudeDegrees, zone);
            var statistics = ReadingSetStatistics.Of(leaves);
            var findings = ReadingSetChecks.Of(leaves, new ReadingSetContext
            {
                SolarNoon = sun.Noon,
                Sunrise = sun.Sunrise,
                Previous = previous.GetValueOrDefault(group.Key.Measure),
                BaselineTensionMpa = Baseline(group.Key.Measure, vpdKpaAt?.Invoke(group.Key.Date)),
            });
            previous[group.Key.Measure] = new PreviousReadingSet(leaves[0].TakenAt, statistics.RobustMeanMpa);
            sets.Add(new ReadingSet
            {
                Date = group.Key.Date,
                Measure = group.Key.Measure,
                TakenAt = TimeZoneInfo.ConvertTime(leaves[0].TakenAt, zone),
                Leaves = leaves,
                Statistics = statistics,
                Findings = findings,
            });
        }

        return sets;
    }

    private static double? Baseline(WaterPotentialMeasure measure, double? vpdKpa) =>
        measure == WaterPotentialMeasure.Predawn || vpdKpa is null ? null : NonStressedBaseline.For(measure).TensionMpa(vpdKpa.Value);
}
