using System.Globalization;
using System.Text.Json.Serialization;
using EstateWater.Agronomy.Units;

namespace EstateWater.Planning.WhatIf;

/// <summary>Something the manager decides or wants to try, which the plan then keeps to.</summary>
/// <remarks>A night is named by the day on which its source's daily window opens.</remarks>
[JsonDerivedType(typeof(ValveClosed), "valve_closed")]
[JsonDerivedType(typeof(SourceOut), "source_out")]
[JsonDerivedType(typeof(SetPinned), "set_pinned")]
public abstract record PlanChange
{
    /// <summary>What it says, in words.</summary>
    [JsonIgnore]
    public abstract string Words { get; }

    private protected static string Nights(DateOnly from, DateOnly to) => from == to
        ? Say($"on the night of {from:ddd d MMM}")
        : Say($"from the night of {from:ddd d MMM} to the night of {to:ddd d MMM}");

    private protected static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A valve that stays closed.</summary>
/// <param name="Valve">Its code.</param>
/// <param name="FromNight">First night without it.</param>
/// <param name="ToNight">Last night without it; not before the first.</param>
public sealed record ValveClosed(string Valve, DateOnly FromNight, DateOnly ToNight) : PlanChange
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Words => $"{Valve} closed {Nights(FromNight, ToNight)}";
}

/// <summary>A pump, dam or mains that gives no water.</summary>
/// <param name="Source">Its code.</param>
/// <param name="FromNight">First night without it.</param>
/// <param name="ToNight">Last night without it; not before the first.</param>
public sealed record SourceOut(string Source, DateOnly FromNight, DateOnly ToNight) : PlanChange
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Words => $"{Source} out {Nights(FromNight, ToNight)}";
}

/// <summary>A set put in its place by hand. A valve with such sets opens for these alone: all its water is placed by hand.</summary>
/// <param name="Valve">The valve's code.</param>
/// <param name="Start">When it opens, in estate time; a quarter hour of one of its source's nights.</param>
/// <param name="Hours">How long; whole quarter hours. [h]</param>
public sealed record SetPinned(string Valve, DateTimeOffset Start, double Hours) : PlanChange
{
    /// <summary>Where the set stood that was put here; null for one that stays where it was planned.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SetPlace? Was { get; init; }

    /// <summary>When it closes.</summary>
    [JsonIgnore]
    public DateTimeOffset End => Start.AddHours(Hours);

    /// <inheritdoc/>
    [JsonIgnore]
    public override string Words => Say($"{Valve} opens {Start:ddd d MMM HH:mm} for {Hours:0.##} h");

    /// <summary>What was done to a valve's sets, in words: those that were moved; where none was, all that were put in their place.</summary>
    /// <param name="sets">All sets placed on one valve.</param>
    public static Sentence Tell(IEnumerable<SetPinned> sets)
    {
        var all = sets.OrderBy(s => s.Start).ToList();
        var moved = all.Where(s => s.Was is not null).ToList();
        return moved.Count > 0
            ? Sentence.Join(" and ", moved.Select(s => s.Move(s.Was!)))
            : Sentence.Of($"{all[0].Valve} opens {Sentence.Join(", ", all.Select(s => Sentence.Of($"{s.Start:ddd d MMM HH:mm} for {s.Hours:0.##} h")))}");
    }

    private Sentence Move(SetPlace was) => was.Start == Start
        ? Sentence.Of($"{Valve} on {Start:ddd d MMM HH:mm} runs {Hours:0.##} h instead of {was.Hours:0.##} h")
        : Sentence.Of($"{Valve} moves from {was.Start:ddd d MMM HH:mm} to {Start:ddd d MMM HH:mm}{(was.Hours == Hours ? Sentence.Empty : Sentence.Of($", {Hours:0.##} h instead of {was.Hours:0.##} h"))}");
}

/// <summary>When a set opens, and how long.</summary>
/// <param name="Start">When it opens, in estate time.</param>
/// <param name="Hours">How long. [h]</param>
public sealed record SetPlace(DateTimeOffset Start, double Hours);
