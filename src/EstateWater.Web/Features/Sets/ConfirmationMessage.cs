using EstateWater.Data.Model;
using EstateWater.Data.Store;

namespace EstateWater.Web.Features.Sets;

/// <summary>What the phone sends of a set. Everything may be missing or wrong until <see cref="Mistakes"/> is empty.</summary>
public sealed record ConfirmationMessage
{
    /// <summary>A set runs no longer than a day. [h]</summary>
    public const double MostHours = 24;

    private const int LongestName = 80;
    private const int LongestNote = 200;

    /// <summary>Made on the phone; the same entry sent twice has the same.</summary>
    public Guid? EntryId { get; init; }

    /// <summary>The published set.</summary>
    public int? SetId { get; init; }

    /// <summary>Hours really run; 0 when it could not be done. [h]</summary>
    public double? Hours { get; init; }

    /// <summary>Meter difference; null when not read. [m³]</summary>
    public double? MeterM3 { get; init; }

    /// <summary>What the meter showed before; null when not read. [m³]</summary>
    public double? MeterBeforeM3 { get; init; }

    /// <summary>What it showed after; null when not read. [m³]</summary>
    public double? MeterAfterM3 { get; init; }

    /// <summary>When the valve was really opened; null for as planned.</summary>
    public DateTimeOffset? StartedAt { get; init; }

    /// <summary>Why it could not be done, one of <see cref="NotRunReason"/> by name; null when it was.</summary>
    public string? NotRun { get; init; }

    /// <summary>The entry that this one corrects; null for the first.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>Who says so.</summary>
    public string? ConfirmedBy { get; init; }

    /// <summary>Why it could not be done, or a remark.</summary>
    public string? Note { get; init; }

    /// <summary>The phone's clock when it was entered.</summary>
    public DateTimeOffset? EnteredAt { get; init; }

    /// <summary>What is wrong, by field; empty when nothing is.</summary>
    public Dictionary<string, string[]> Mistakes() => new (string Field, bool Wrong, string Rule)[]
    {
        ("entryId", EntryId is null || EntryId == Guid.Empty, "An entry needs its id, a UUID made on the phone."),
        ("setId", SetId is null, "An entry names its set."),
        ("hours", Hours is not (>= 0 and <= MostHours), "Hours must be between 0 and 24, like 6.5."),
        ("meterM3", MeterM3 is { } m3 && !(m3 >= 0 && double.IsFinite(m3)), "The meter must show 0 m³ or more, like 171.5."),
        ("meterM3", MeterBeforeM3 is { } before && !(before >= 0 && double.IsFinite(before)), "The meter must show 0 m³ or more, like 171.5."),
        ("meterM3", MeterAfterM3 is { } after && !(after >= (MeterBeforeM3 ?? 0) && double.IsFinite(after)), "The meter after must not show less than before."),
        ("notRun", NotRun is not null && (Hours != 0 || Reason is null), "A set that did run has no such reason; one that did not has one of the list."),
        ("confirmedBy", string.IsNullOrWhiteSpace(ConfirmedBy) || ConfirmedBy.Length > LongestName, $"Say who confirms, in at most {LongestName} letters."),
        ("note", Note?.Length > LongestNote, $"A note has at most {LongestNote} letters."),
        ("note", Hours == 0 && (Reason is null or NotRunReason.Other) && string.IsNullOrWhiteSpace(Note), "Say why it could not be run."),
        ("enteredAt", EnteredAt is null, "An entry says when it was made, like 2025-01-22T06:30:00+02:00."),
    }
        .Where(check => check.Wrong)
        .GroupBy(check => check.Field)
        .ToDictionary(checks => checks.Key, checks => checks.Select(c => c.Rule).ToArray());

    /// <summary>The entry to store, of a message without mistakes.</summary>
    public ConfirmationEntry ToEntry() => new(
        EntryId!.Value,
        SetId!.Value,
        Hours!.Value,
        MeterM3,
        ConfirmedBy!.Trim(),
        string.IsNullOrWhiteSpace(Note) ? null : Note.Trim(),
        EnteredAt!.Value)
    {
        StartedAt = StartedAt,
        MeterBeforeM3 = MeterBeforeM3,
        MeterAfterM3 = MeterAfterM3,
        NotRun = Reason,
        Replaces = Replaces,
    };

    private NotRunReason? Reason => Enum.GetValues<NotRunReason>().Cast<NotRunReason?>().FirstOrDefault(reason => reason.ToString() == NotRun);
}
