using EstateWater.Data.Model;

namespace EstateWater.Data.Store.Taken;

/// <summary>What became of an entry.</summary>
public enum TakenStatus
{
    /// <summary>Stored now.</summary>
    Stored,

    /// <summary>The same entry was stored before; nothing changed.</summary>
    StoredBefore,

    /// <summary>The same id was stored before with other content; nothing changed.</summary>
    OtherContent,

    /// <summary>There is no such block.</summary>
    UnknownBlock,

    /// <summary>The same thing of that day is stored already; nothing changed.</summary>
    Twice,

    /// <summary>It replaces an entry that is not there, or that no longer counts; nothing changed.</summary>
    NotStanding,

    /// <summary>It replaces what someone else took; nothing changed.</summary>
    NotTheirs,

    /// <summary>It tells of a moment that is still ahead, or long past; nothing changed.</summary>
    WrongTime,
}

/// <summary>The answer to an entry.</summary>
/// <param name="Status">What became of it.</param>
/// <param name="Entry">What is stored for it or, where it was refused, against it.</param>
/// <param name="Problem">Why it was not stored, in words; <see langword="null"/> when it was.</param>
public sealed record TakenResult(TakenStatus Status, TakenEntry? Entry, string? Problem);
