using System.Text.Json;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Web.Features.Week;

/// <summary>What the manager changed by hand: hours of blocks, closed valves, pumps that are out, sets put in their place. Never changed; each change gives another.</summary>
public sealed record WeekEdits
{
    /// <summary>Nothing changed.</summary>
    public static readonly WeekEdits None = new();

    /// <summary>Hours fixed by hand, by block. [h]</summary>
    public IReadOnlyDictionary<string, double> HoursByHand { get; init; } = new Dictionary<string, double>();

    /// <summary>The other changes, in the order in which they were made.</summary>
    public IReadOnlyList<PlanChange> Changes { get; init; } = [];

    /// <summary>Whether nothing is changed.</summary>
    public bool IsEmpty => HoursByHand.Count == 0 && Changes.Count == 0;

    /// <summary>Valves whose sets are placed by hand; their hours are those of the sets.</summary>
    public IReadOnlySet<string> PlacedValves => Changes.OfType<SetPinned>().Select(p => p.Valve).ToHashSet();

    /// <summary>With a block's hours fixed, or given back where null. The last hours on a valve count for all its blocks.</summary>
    public WeekEdits WithHours(string block, double? hours, IEnumerable<string> onSameValve)
    {
        var byHand = new Dictionary<string, double>(HoursByHand);
        byHand.Remove(block);
        if (hours is { } fixedHours)
        {
            onSameValve.ToList().ForEach(other => byHand.Remove(other));
            byHand[block] = fixedHours;
        }

        return this with { HoursByHand = byHand };
    }

    /// <summary>With one more change; the same one twice is one.</summary>
    public WeekEdits With(PlanChange change) => Changes.Contains(change) ? this : this with { Changes = [.. Changes, change] };

    /// <summary>Without a change.</summary>
    public WeekEdits Without(PlanChange change) => this with { Changes = [.. Changes.Where(c => c != change)] };

    /// <summary>With all of a valve's sets placed by hand: they take the place of sets placed before and of its blocks' hours.</summary>
    public WeekEdits WithSets(string valve, IEnumerable<SetPinned> sets, IEnumerable<string> blocks)
    {
        var byHand = new Dictionary<string, double>(HoursByHand);
        blocks.ToList().ForEach(block => byHand.Remove(block));
        return WithoutSets(valve) with { HoursByHand = byHand, Changes = [.. WithoutSets(valve).Changes, .. sets] };
    }

    /// <summary>With a valve's sets given back to the planner.</summary>
    public WeekEdits WithoutSets(string valve) => this with { Changes = [.. Changes.Where(c => c is not SetPinned pin || pin.Valve != valve)] };

    /// <summary>As text, for keeping.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, KeptForm);

    /// <summary>From kept text.</summary>
    /// <exception cref="JsonException">The text says no changes.</exception>
    public static WeekEdits FromJson(string json) => JsonSerializer.Deserialize<WeekEdits>(json, KeptForm) ?? throw new JsonException("The text says no changes.");

    private static readonly JsonSerializerOptions KeptForm = new() { IgnoreReadOnlyProperties = true };
}
