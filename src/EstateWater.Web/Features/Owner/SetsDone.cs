using EstateWater.Data.Model;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Owner;

/// <summary>What became of sets, in order of their state.</summary>
/// <param name="Ran">Confirmed with about the hours planned.</param>
/// <param name="RanLess">Confirmed with clearly fewer hours.</param>
/// <param name="CouldNot">Confirmed as not run.</param>
/// <param name="Running">Begun, not over, and nobody said anything yet.</param>
/// <param name="ToCome">Not begun.</param>
/// <param name="Unsaid">Over, and nobody said what was done.</param>
public sealed record SetsDone(
    IReadOnlyList<SetLine> Ran, IReadOnlyList<SetLine> RanLess, IReadOnlyList<SetLine> CouldNot, IReadOnlyList<SetLine> Running, IReadOnlyList<SetLine> ToCome, IReadOnlyList<SetLine> Unsaid)
{
    // A set that ran less than this share of its hours did not run as planned. Ours.
    private const double AsPlanned = 0.9;

    /// <summary>Sorts sets as they stand at a moment.</summary>
    public static SetsDone Of(IReadOnlyList<SetLine> lines, DateTimeOffset now)
    {
        var said = lines.ToLookup(line => line.Confirmed switch
        {
            null => line.Start > now ? State.ToCome : line.End > now ? State.Running : State.Unsaid,
            { Hours: 0 } => State.CouldNot,
            { Hours: var hours } => hours < AsPlanned * line.Hours ? State.RanLess : State.Ran,
        });
        return new SetsDone([.. said[State.Ran]], [.. said[State.RanLess]], [.. said[State.CouldNot]], [.. said[State.Running]], [.. said[State.ToCome]], [.. said[State.Unsaid]]);
    }

    /// <summary>“1 ran, 1 could not (pump down), 10 to come”.</summary>
    public string Words(UnitChoice units)
    {
        var less = $"{units.Trimmed(RanLess.Sum(line => line.Confirmed!.Hours))} of {units.Hours(RanLess.Sum(line => line.Hours))}";
        var parts = new[]
        {
            (Ran.Count, "ran"),
            (RanLess.Count, $"ran only {less}"),
            (CouldNot.Count, $"could not{Reasons(units)}"),
            (Running.Count, "running"),
            (ToCome.Count, "to come"),
            (Unsaid.Count, "not confirmed"),
        };
        return string.Join(", ", parts.Where(part => part.Count > 0).Select(part => $"{part.Count} {part.Item2}"));
    }

    private string Reasons(UnitChoice units)
    {
        var words = new SetsWords(FieldLanguage.English, units);
        var reasons = CouldNot
            .Select(line => line.Confirmed!)
            .Select(said => said.NotRun is null or NotRunReason.Other ? said.Note?.Trim() : words.Reason(said.NotRun.Value))
            .Where(reason => !string.IsNullOrEmpty(reason))
            .Distinct()
            .ToList();
        return reasons.Count == 0 ? "" : $" ({string.Join(", ", reasons)})";
    }

    private enum State
    {
        Ran,
        RanLess,
        CouldNot,
        Running,
        ToCome,
        Unsaid,
    }
}
