using EstateWater.Planning.WhatIf;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>One change in words, and the changes without it.</summary>
/// <param name="Words">What it says.</param>
/// <param name="Without">All changes but this one.</param>
public sealed record ChangeLine(string Words, WeekEdits Without)
{
    /// <summary>A line a change; the sets placed on one valve are one.</summary>
    public static IReadOnlyList<ChangeLine> Of(WeekEdits edits, UnitChoice units)
    {
        var hours = edits.HoursByHand
            .OrderBy(h => h.Key, StringComparer.Ordinal)
            .Select(h => new ChangeLine($"{h.Key} gets {units.Hours(h.Value)}", edits.WithHours(h.Key, null, [])));
        var nights = edits.Changes
            .Where(c => c is not SetPinned)
            .Select(c => new ChangeLine(c.Words, edits.Without(c)));
        var sets = edits.Changes.OfType<SetPinned>()
            .GroupBy(p => p.Valve)
            .Select(p => new ChangeLine(SetPinned.Tell(p).In(units), edits.WithoutSets(p.Key)));
        return [.. hours, .. nights, .. sets];
    }
}
