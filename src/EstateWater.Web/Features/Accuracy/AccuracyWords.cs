using EstateWater.Planning.Accuracy;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Accuracy;

/// <summary>Says in plain words how good past outlooks were.</summary>
public static class AccuracyWords
{
    /// <summary>The owner's sentence; says so when no reading had an outlook a week before it.</summary>
    /// <param name="week">The score a week ahead; null without any.</param>
    /// <param name="whose">Whose outlook: “the outlook”, “the outlook of B07”.</param>
    public static string Sentence(AccuracyScore? week, UnitChoice units, string whose = "the outlook") => week is null
        ? $"No reading had an outlook a week before it yet, so nobody can say how good {whose} is a week ahead."
        : $"A week ahead {whose} was off by {units.Tension(week.ErrorBar)} on average, {AgainstNoChange(week)} taking the last reading for granted; "
            + $"of {OfTen(week)} fell inside the band.";

    /// <summary>A second sentence when the outlook erred more to one side than to the other; null when it did not.</summary>
    public static string? Lean(AccuracyScore? score, UnitChoice units) => score is null || Math.Abs(score.BiasBar) < 0.05 || Math.Abs(score.BiasBar) < score.ErrorBar / 2
        ? null
        : $"Mostly to one side: the readings came out {units.Tension(Math.Abs(score.BiasBar))} {(score.BiasBar < 0 ? "drier" : "wetter")} than expected on average.";

    /// <summary>A third when the band held clearly fewer or more readings than it should; null when it held about eight of ten.</summary>
    public static string? BandIsOff(AccuracyScore? score) => score switch
    {
        null or { InsideBandShare: >= 0.7 and <= 0.9 } => null,
        { InsideBandShare: < 0.7 } => "The band should hold eight of ten: it has been too narrow, so leave more room than it shows.",
        _ => "The band should hold eight of ten: it has been wider than it needs to be.",
    };

    /// <summary>For the estate page; null when nothing can be said.</summary>
    public static string? Brief(AccuracyReport? report, UnitChoice units) =>
        report?.Estate(AccuracyReport.WeekDays) is { } week ? $"Outlook a week ahead: off by {units.Tension(week.ErrorBar)} on average" : null;

    /// <summary>How far the work is.</summary>
    public static string Progress(LookBack lookBack) => lookBack switch
    {
        { IsWorking: true, Progress: { } progress } => $"Past outlooks are being held against the readings: {progress.Done} of {progress.Total} past mornings done.",
        { IsWorking: true } => "Past outlooks are about to be held against the readings.",
        { Phase: LookBackPhase.Stopped, Progress: { } progress } => $"Stopped after {progress.Done} of {progress.Total} past mornings. What is done is kept.",
        { Phase: LookBackPhase.Stopped } => "Stopped before the first past morning.",
        { Phase: LookBackPhase.Failed } => $"Holding past outlooks against the readings failed: {lookBack.Problem}",
        { Phase: LookBackPhase.NotAsked } => "Past outlooks are held against the readings anew some minutes after the program starts.",
        _ => "Past outlooks have been held against the readings.",
    };

    /// <summary>“+0.3”, with a true minus, in the reader's unit.</summary>
    public static string Bias(double bar, UnitChoice units)
    {
        var size = units.BareTension(Math.Abs(bar));
        return size.All(c => c is '0' or '.' or ',') ? size : (bar < 0 ? "−" : "+") + size;
    }

    private static string OfTen(AccuracyScore score) => score.Sets < 10
        ? $"{EstateText.Count(score.Sets)} reading{(score.Sets == 1 ? "" : "s")}, {EstateText.Count((int)Math.Round(score.Sets * score.InsideBandShare))}"
        : $"ten readings, {EstateText.Count((int)Math.Round(10 * score.InsideBandShare))}";

    private static string AgainstNoChange(AccuracyScore score) => (score.ErrorBar / score.NoChangeErrorBar) switch
    {
        < 0.29 => "about a quarter as much as",
        < 0.42 => "about a third as much as",
        < 0.58 => "about half as much as",
        < 0.71 => "about two thirds as much as",
        < 0.9 => "less than",
        <= 1.1 => "about as much as",
        > 1.1 => "more than",
        _ => "as much as", // Nothing changed, and nothing was expected to.
    };
}
