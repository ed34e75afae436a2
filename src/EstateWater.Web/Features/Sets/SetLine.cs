using EstateWater.Data.Model;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Sets;

/// <summary>A published set as the irrigator reads it.</summary>
public sealed record SetLine
{
    /// <summary>Its number in the store.</summary>
    public required int SetId { get; init; }

    /// <summary>The valve to open.</summary>
    public required string Valve { get; init; }

    /// <summary>The source that feeds it.</summary>
    public required string Source { get; init; }

    /// <summary>Blocks that get the water: code, with the name where there is one.</summary>
    public required IReadOnlyList<string> Blocks { get; init; }

    /// <summary>Opens, estate time.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>Closes, estate time.</summary>
    public required DateTimeOffset End { get; init; }

    /// <summary>[h]</summary>
    public required double Hours { get; init; }

    /// <summary>[m³/h]</summary>
    public required double FlowM3PerH { get; init; }

    /// <summary>The day on which its night begins.</summary>
    public required DateOnly Night { get; init; }

    /// <summary>What was really done; null until someone said so.</summary>
    public ConfirmedHours? Confirmed { get; init; }
}

/// <summary>What counts of all that irrigators said of a set.</summary>
/// <param name="Hours">Hours really run; 0 when it could not be done. [h]</param>
/// <param name="MeterM3">Meter difference; null when not read. [m³]</param>
/// <param name="By">Who.</param>
/// <param name="Note">Why not, or a remark.</param>
/// <param name="At">The phone's clock when it was entered, estate time.</param>
public sealed record ConfirmedHours(double Hours, double? MeterM3, string By, string? Note, DateTimeOffset At)
{
    /// <summary>When the valve was really opened, estate time.</summary>
    public DateTimeOffset StartedAt { get; init; }

    /// <summary>When it came in, by the server's clock, estate time.</summary>
    public DateTimeOffset ReceivedAt { get; init; }

    /// <summary>What the meter showed before and after; null when not read. [m³]</summary>
    public (double? BeforeM3, double? AfterM3) Meter { get; init; }

    /// <summary>Why it could not be done; null when it was.</summary>
    public NotRunReason? NotRun { get; init; }

    /// <summary>The entry that counts.</summary>
    public Guid EntryId { get; init; }

    /// <summary>The set that the entry names, perhaps of an earlier plan.</summary>
    public int SetId { get; init; }

    /// <summary>All entries of the set, those that were corrected too.</summary>
    public IReadOnlyList<Guid> Entries { get; init; } = [];

    /// <summary>Addresses of photos that came with them.</summary>
    public IReadOnlyList<string> Photos { get; init; } = [];

    /// <summary>Whether it corrects an earlier entry.</summary>
    public bool IsCorrection => Entries.Count > 1;

    /// <summary>In words, in English.</summary>
    public string Words(UnitChoice units) => new SetsWords(FieldLanguage.English, units).Said(this);
}
