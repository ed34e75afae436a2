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
    Guid EntryId, int SetId, double Hours, double? MeterM3, string ConfirmedBy, string? Note, DateTimeOffset EnteredAt);

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
}

/// <summary>The answer to an entry.</summary>
/// <param name="Status">What became of it.</param>
/// <param name="Receipt">What is stored for this entry or, in a conflict, against it.</param>
/// <param name="Problem">Why it was not stored, in words; <see langword="null"/> when it was.</param>
public sealed record ConfirmationResult(ConfirmationStatus Status, SetConfirmation? Receipt, string? Problem);
