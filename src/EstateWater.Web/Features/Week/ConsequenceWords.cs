using System.Globalization;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>Says what follows from changes in one sentence.</summary>
public static class ConsequenceWords
{
    // More blocks than these are counted, not named.
    private const int Named = 4;

    // A smaller rise of a chance is within what the outlook can tell apart; ours.
    private const double WorthSaying = 0.05;

    /// <summary>For example: Without V3 on the night of Tue 20 Jan, two blocks pass their ceiling: B04 on Thu 22 Jan, B09 on Sat 24 Jan; 120 m³ less is used.</summary>
    public static string Say(WeekEdits edits, PlanConsequences consequences, UnitChoice units) =>
        $"{Cause(edits, units)}, {Ceilings(consequences, units)}{Water(consequences.M3More, units)}.";

    /// <summary>Who comes off worse, in a few words: “A6, D5 and two more come off worse”.</summary>
    public static string InShort(PlanConsequences consequences)
    {
        var worse = consequences.Worse.Concat(consequences.Deeper).DistinctBy(b => b.Block).ToList();
        return worse.Count switch
        {
            0 => "No block comes off worse",
            1 => $"{worse[0].Block} comes off worse",
            _ => $"{List(worse, b => b.Block)} come off worse",
        };
    }

    /// <summary>A chance as a whole percentage.</summary>
    public static string Percent(double chance) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * chance)} %");

    private static string Cause(WeekEdits edits, UnitChoice units)
    {
        var lines = ChangeLine.Of(edits, units);
        return (lines.Count, edits.Changes) switch
        {
            (1, [ValveClosed or SourceOut]) => $"With {lines[0].Words}",
            (1, _) => $"If {lines[0].Words}",
            _ => $"With these {EstateText.Count(lines.Count)} changes",
        };
    }

    private static string Ceilings(PlanConsequences consequences, UnitChoice units)
    {
        var worse = consequences.Worse.ToList();
        var deeper = consequences.Deeper.ToList();
        var spared = consequences.Spared.Select(b => b.Block).ToList();
        var isNoneWorse = worse.Count == 0 && deeper.Count == 0;
        var parts = new[]
        {
            isNoneWorse ? "no further block passes its ceiling" : null,
            worse.Count == 0 ? null : $"{EstateText.Count(worse.Count)} {Pass(worse)}: {List(worse, block => One(block, units))}",
            deeper.Count == 0 ? null : $"{EstateText.Count(deeper.Count)} {(deeper.Count == 1 ? "block past its ceiling gets" : "blocks past their ceiling get")} worse: {List(deeper, block => Depth(block, units))}",
            spared.Count == 0 ? null : $"{string.Join(" and ", spared)} no longer {(spared.Count == 1 ? "passes its" : "pass their")} ceiling",
            isNoneWorse ? Rise(consequences) : null,
        };
        return string.Join("; ", parts.OfType<string>());
    }

    private static string List(List<BlockConsequence> blocks, Func<BlockConsequence, string> one) =>
        string.Join(", ", blocks.Take(Named).Select(one)) + (blocks.Count > Named ? $" and {EstateText.Count(blocks.Count - Named)} more" : "");

    private static string Pass(List<BlockConsequence> worse)
    {
        var pass = worse.Count == 1 ? "block passes its ceiling" : "blocks pass their ceiling";
        var sooner = worse.Count(b => b.Before.FirstDayPast is not null);
        return pass + (sooner == 0 ? "" : sooner == worse.Count ? " sooner" : ", or pass it sooner");
    }

    private static string One(BlockConsequence block, UnitChoice units)
    {
        var sooner = block.Before.FirstDayPast is { } then ? $" instead of {units.Day(then)}" : "";
        return $"{block.Block} on {units.Day(block.After.FirstDayPast!.Value)}{sooner}";
    }

    private static string Depth(BlockConsequence block, UnitChoice units) => block.DaysMore > 0
        ? $"{block.Block} on {EstateText.Count(block.After.DaysPast)} days instead of {EstateText.Count(block.Before.DaysPast)}"
        : $"{block.Block} up to {units.Tension(block.After.PeakBar)} instead of {units.BareTension(block.Before.PeakBar)}";

    private static string? Rise(PlanConsequences consequences)
    {
        var most = consequences.Blocks.OrderByDescending(b => b.After.Chance - b.Before.Chance).FirstOrDefault();
        return most is not null && most.After.Chance - most.Before.Chance >= WorthSaying
            ? $"the chance of it rises most in {most.Block}, from {Percent(most.Before.Chance)} to {Percent(most.After.Chance)}"
            : null;
    }

    private static string Water(double m3More, UnitChoice units) => Math.Round(m3More) switch
    {
        0 => "; as much water is used as before",
        > 0 => $"; {units.VolumeOf(m3More)} more is used",
        _ => $"; {units.VolumeOf(-m3More)} less is used",
    };
}
