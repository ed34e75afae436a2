using EstateWater.Data.Model;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>What irrigators said went wrong since the last plan, so that the next one does not count on it.</summary>
/// <param name="What">In a sentence: what, who, when.</param>
/// <param name="Source">The source that gave no water; null where the source is not to blame.</param>
/// <param name="Valve">The valve that cannot open; null where the valve is not to blame.</param>
public sealed record SetTrouble(string What, string? Source, string? Valve)
{
    // A set that ran for less of its hours was cut off, and not merely stopped early; ours.
    private const double CutOff = 0.5;

    /// <summary>What would have to do without it: a source or a valve; null where nobody can say.</summary>
    public string? Out => Source ?? Valve;

    /// <summary>The newest first; several sets that one pump failed are one.</summary>
    /// <param name="sets">Published sets that stand.</param>
    /// <param name="units">How the reader is told hours and times.</param>
    public static IReadOnlyList<SetTrouble> SinceLastPlan(StandingSets sets, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(sets);
        return [.. sets.Lines
            .Where(set => set.Confirmed is { } said && said.ReceivedAt >= sets.PublishedAt && said.Hours < CutOff * set.Hours)
            .OrderByDescending(set => set.Confirmed!.At)
            .GroupBy(set => (Source: SourceOf(set), Valve: SourceOf(set) is null ? set.Valve : null, set.Confirmed!.NotRun))
            .Select(failed => new SetTrouble(Words([.. failed], units), failed.Key.Source, ValveOf(failed.First())))];
    }

    /// <summary>Whether a change does without what failed.</summary>
    public bool IsMetBy(PlanChange change) => change switch
    {
        SourceOut away => away.Source == Source,
        ValveClosed closed => closed.Valve == Valve,
        _ => false,
    };

    private static string? SourceOf(SetLine set) => set.Confirmed!.NotRun is NotRunReason.PumpDown or NotRunReason.NoPower ? set.Source : null;

    private static string? ValveOf(SetLine set) => set.Confirmed!.NotRun is NotRunReason.ValveBroken or NotRunReason.PipeBurst ? set.Valve : null;

    private static string Words(List<SetLine> failed, UnitChoice units)
    {
        var (newest, said) = (failed[0], failed[0].Confirmed!);
        var valves = string.Join(", ", failed.Select(set => set.Valve).Distinct().Order(StringComparer.Ordinal));
        var ran = said.Hours > 0 ? $"ran {units.Hours(said.Hours)} of {units.Hours(newest.Hours)}" : "could not run";
        var causes = new[]
        {
            said.NotRun is { } reason and not NotRunReason.Other ? new SetsWords(FieldLanguage.English, units).Reason(reason) : null,
            string.IsNullOrWhiteSpace(said.Note) ? null : $"“{said.Note}”",
        };
        var at = said.At < said.ReceivedAt ? said.At : said.ReceivedAt; // A phone's clock may run ahead.
        var why = string.Join(", ", causes.OfType<string>());
        return $"{valves} {ran}{(why.Length == 0 ? "" : $": {why}")} ({said.By}, {units.DayClock(at)}).";
    }
}
