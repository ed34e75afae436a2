using System.Globalization;
using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using static EstateWater.Agronomy.WaterStatus.FindingSeverity;
using static EstateWater.Agronomy.WaterStatus.ReadingCheck;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Looks at a reading set and says what is doubtful about it.</summary>
[Method(
    "Checks of a reading set",
    Source = "Levin (2019), Agric. Water Manage. 221:422–429 (time in the bag, delay); Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, pp. 149–159 and 267–269; McCutchan & Shackel (1992), J. Am. Soc. Hort. Sci. 117:607–611 (spread); extension practice for the window around solar noon; the limits named ours are ours",
    Check = "A sound set without findings, and each fault planted in it")]
public static class ReadingSetChecks
{
    /// <summary>Findings, the gravest first; none when the set is sound.</summary>
    /// <param name="leaves">At least one leaf, finite tensions.</param>
    /// <param name="context">What is known beside the leaves.</param>
    /// <param name="rules">Limits; the shipped ones when <see langword="null"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">No leaf, or a tension that is not finite.</exception>
    public static IReadOnlyList<ReadingFinding> Of(IReadOnlyList<LeafFact> leaves, ReadingSetContext context, ReadingSetRules? rules = null)
    {
        ArgumentNullException.ThrowIfNull(leaves);
        ArgumentNullException.ThrowIfNull(context);
        Require.Values([.. leaves.Select(l => l.TensionMpa)], 1, nameof(leaves));
        rules ??= ReadingSetRules.Default;
        if (leaves.Select(l => l.Measure).Distinct().Count() > 1)
        {
            return [new(MixedMeasures, Reject, "Leaf, stem and predawn are mixed: keep a set for each.")];
        }

        var measure = leaves[0].Measure;
        IEnumerable<ReadingFinding?> findings =
        [
            Window(leaves, measure, context, rules),
            SameTime(leaves, context, rules),
            .. LeafHandlingChecks.Of(leaves, measure, rules),
            .. SpreadChecks.Of(leaves, measure, rules),
            JumpSince(leaves, context, rules),
            Baseline(leaves, context, rules),
        ];
        return [.. findings.OfType<ReadingFinding>().OrderByDescending(f => f.Severity)];
    }

    private static ReadingFinding? Window(IReadOnlyList<LeafFact> leaves, WaterPotentialMeasure measure, ReadingSetContext context, ReadingSetRules rules)
    {
        if (measure == WaterPotentialMeasure.Predawn)
        {
            var late = leaves.Count(l => l.TakenAt > context.Sunrise);
            return late > 0 ? new(OutsideWindow, Reject, $"{Words.Leaves(late)} read after sunrise: not predawn any more.") : null;
        }

        if (context.SolarNoon is not { } noon)
        {
            return null;
        }

        double Outside(TimeSpan fromNoon) => Math.Max(-fromNoon.TotalMinutes - rules.WindowBeforeMin, fromNoon.TotalMinutes - rules.WindowAfterMin);
        var farthest = leaves.Select(l => l.TakenAt - noon).MaxBy(Outside);
        return Outside(farthest) <= 0 ? null : new(
            OutsideWindow,
            Outside(farthest) > rules.NearWindowMin ? Reject : Doubtful,
            $"Read {Words.Time(farthest)} {(farthest < TimeSpan.Zero ? "before" : "after")} solar noon; the window is {Words.Time(TimeSpan.FromMinutes(rules.WindowBeforeMin))} before to {Words.Time(TimeSpan.FromMinutes(rules.WindowAfterMin))} after.");
    }

    private static ReadingFinding? SameTime(IReadOnlyList<LeafFact> leaves, ReadingSetContext context, ReadingSetRules rules)
    {
        if (context.Previous is not { } previous)
        {
            return null;
        }

        // Between instants, so that a change of the clocks in between does not count.
        var days = (leaves.Min(l => l.TakenAt) - previous.TakenAt).TotalDays;
        var apart = TimeSpan.FromDays(days - Math.Round(days));
        return apart.Duration().TotalMinutes <= rules.SameTimeMin ? null : new(
            OtherTimeThanBefore, Doubtful, $"Read {Words.Time(apart)} {(apart < TimeSpan.Zero ? "earlier" : "later")} in the day than the set before: the two do not compare.");
    }

    private static ReadingFinding? JumpSince(IReadOnlyList<LeafFact> leaves, ReadingSetContext context, ReadingSetRules rules)
    {
        var change = Descriptive.Mean([.. leaves.Select(l => l.TensionMpa)]) - context.Previous?.MeanMpa;
        return change is { } c && Math.Abs(c) > rules.JumpMpa
            ? new(Jump, Doubtful, Sentence.Of($"{Quantity.TensionOfMpa(Math.Abs(c))} {(c > 0 ? "drier" : "wetter")} than the set before: read again unless water, rain or weather explains it."))
            : null;
    }

    private static ReadingFinding? Baseline(IReadOnlyList<LeafFact> leaves, ReadingSetContext context, ReadingSetRules rules)
    {
        var wetter = context.BaselineTensionMpa - Descriptive.Mean([.. leaves.Select(l => l.TensionMpa)]);
        return wetter is { } w && w > rules.WetterThanBaselineMpa
            ? new(WetterThanBaseline, Doubtful, Sentence.Of($"{Quantity.TensionOfMpa(w)} wetter than a vine without stress in that air: wet leaves, or the end point taken too early?"))
            : null;
    }
}

/// <summary>Numbers in the words of a finding.</summary>
internal static class Words
{
    public static string Leaves(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "leaf" : "leaves")}");

    public static string Time(TimeSpan span)
    {
        var minutes = (int)Math.Round(span.Duration().TotalMinutes);
        return string.Create(CultureInfo.InvariantCulture, $"{(minutes >= 60 ? $"{minutes / 60} h" : "")}{(minutes >= 60 && minutes % 60 > 0 ? " " : "")}{(minutes % 60 > 0 || minutes == 0 ? $"{minutes % 60} min" : "")}");
    }
}
