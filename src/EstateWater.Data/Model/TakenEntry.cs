namespace EstateWater.Data.Model;

/// <summary>
/// What a person took in the rows, as their phone sent it. The first entry with an id counts; a repeat changes nothing. A
/// correction is an entry that names the one it replaces, and a withdrawal is a correction without content: all stay, and
/// only the last of a chain counts.
/// </summary>
public sealed class TakenEntry
{
    public int Id { get; init; }

    /// <summary>Made on the phone, unique: the same entry sent twice is stored once.</summary>
    public required Guid EntryId { get; init; }

    /// <summary>What was taken; of a withdrawal, what was withdrawn.</summary>
    public required TakenKind Kind { get; init; }

    public required string BlockCode { get; init; }

    /// <summary>What was said, as canonical text; empty for a withdrawal.</summary>
    public required string Content { get; init; }

    /// <summary>The entry that this one replaces; <see langword="null"/> for a first.</summary>
    public Guid? Replaces { get; init; }

    public required string TakenBy { get; init; }

    /// <summary>The phone's clock when it was entered.</summary>
    public required DateTimeOffset EnteredAt { get; init; }

    /// <summary>The server's clock when it arrived.</summary>
    public required DateTimeOffset ReceivedAt { get; init; }

    /// <summary>The observations that it stands for, by their number in the table of its kind; none once it is replaced.</summary>
    public int[] RowIds { get; set; } = [];

    /// <summary>Whether it takes back without saying anything else.</summary>
    public bool IsWithdrawal => Content.Length == 0;
}

/// <summary>What is taken in the rows.</summary>
public enum TakenKind
{
    /// <summary>Leaves in the pressure chamber.</summary>
    Chamber,

    /// <summary>Depths of a soil tube.</summary>
    Soil,

    /// <summary>A look at the canopy.</summary>
    Canopy,

    /// <summary>A growth stage.</summary>
    Stage,
}
