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
    /// <param name="rules">In the sender's words.</param>
    public Dictionary<string, string[]> Mistakes(ConfirmationRules rules) => new (string Field, bool Wrong, string Rule)[]
    {
        ("entryId", EntryId is null || EntryId == Guid.Empty, rules.Id),
        ("setId", SetId is null, rules.Set),
        ("hours", Hours is not (>= 0 and <= MostHours), rules.Hours(MostHours)),
        ("meterM3", MeterM3 is { } m3 && !(m3 >= 0 && double.IsFinite(m3)), rules.Meter),
        ("meterM3", MeterBeforeM3 is { } before && !(before >= 0 && double.IsFinite(before)), rules.Meter),
        ("meterM3", MeterAfterM3 is { } after && !(after >= (MeterBeforeM3 ?? 0) && double.IsFinite(after)), rules.MeterBackwards),
        ("notRun", NotRun is not null && (Hours != 0 || Reason is null), rules.NotRun),
        ("confirmedBy", string.IsNullOrWhiteSpace(ConfirmedBy) || ConfirmedBy.Length > LongestName, rules.Who(LongestName)),
        ("note", Note?.Length > LongestNote, rules.Note(LongestNote)),
        ("note", Hours == 0 && (Reason is null or NotRunReason.Other) && string.IsNullOrWhiteSpace(Note), rules.Why),
        ("enteredAt", EnteredAt is null, rules.EnteredAt),
    }
        .Where(check => check.Wrong)
        .GroupBy(check => check.Field)
        .ToDictionary(checks => checks.Key, checks => checks.Select(c => c.Rule).Distinct().ToArray());

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
