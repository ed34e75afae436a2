using EstateWater.Data.Model;

namespace EstateWater.Data.Store;

/// <summary>What an irrigator says of a set, as the phone sends it.</summary>
/// <param name="EntryId">Made on the phone; the same entry sent twice has the same id.</param>
/// <param name="SetId">The set.</param>
/// <param name="Hours">Hours really run, 0 when it could not be done. [h, 0–744]</param>
/// <param name="MeterM3">Meter difference. [m³, 0 or more]</param>
/// <param name="ConfirmedBy">Who says so.</param>
/// <param name="Note">Anything else.</param>
/// <param name="EnteredAt">The phone's clock.</param>
public sealed record ConfirmationEntry(
    Guid EntryId, int SetId, double Hours, double? MeterM3, string ConfirmedBy, string? Note, DateTimeOffset EnteredAt)
{
    /// <summary>When the valve was really opened; null for as planned or, in a correction, as said before.</summary>
    public DateTimeOffset? StartedAt { get; init; }

    /// <summary>What the meter showed before. [m³, 0 or more]</summary>
    public double? MeterBeforeM3 { get; init; }

    /// <summary>What the meter showed after. [m³, not below before]</summary>
    public double? MeterAfterM3 { get; init; }

    /// <summary>Why it could not be done.</summary>
    public NotRunReason? NotRun { get; init; }

    /// <summary>The entry that this one corrects; null for a set's first.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>Water used: as said, or the difference of the two meter readings; null when neither is known. [m³]</summary>
    public double? UsedM3 => MeterM3 ?? MeterAfterM3 - MeterBeforeM3;
}

/// <summary>What became of an entry.</summary>
public enum ConfirmationStatus
{
    /// <summary>Stored now.</summary>
    Stored,

    /// <summary>The same entry was stored before; nothing changed.</summary>
    StoredBefore,

    /// <summary>It contradicts what is stored; nothing changed.</summary>
    Conflict,

    /// <summary>There is no such set.</summary>
    UnknownSet,

    /// <summary>It tells of water that would begin later than now; nothing changed.</summary>
    NotYet,

    /// <summary>It corrects an entry that is not the one that counts; nothing changed.</summary>
    CorrectedBefore,
}

/// <summary>The answer to an entry.</summary>
/// <param name="Status">What became of it.</param>
/// <param name="Receipt">What is stored for this entry or, in a conflict, against it.</param>
/// <param name="Problem">Why it was not stored, in words; <see langword="null"/> when it was.</param>
public sealed record ConfirmationResult(ConfirmationStatus Status, SetConfirmation? Receipt, string? Problem);
