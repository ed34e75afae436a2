namespace EstateWater.Data.Model;

/// <summary>One line of the record of changes: who changed what, and when. Only ever added to.</summary>
public sealed class ChangeRecord
{
    /// <summary>Longest text of <see cref="What"/> and <see cref="Before"/>; longer ones are refused.</summary>
    public const int LongestText = 500;

    public int Id { get; init; }

    /// <summary>The server's clock.</summary>
    public required DateTimeOffset At { get; init; }

    public required string By { get; init; }

    public required ChangeKind Kind { get; init; }

    /// <summary>What it is now, as a short sentence.</summary>
    public required string What { get; init; }

    /// <summary>What it was before; <see langword="null"/> where there was nothing.</summary>
    public string? Before { get; init; }

    /// <summary>The plan that was published; <see langword="null"/> for other changes.</summary>
    public int? PlanId { get; init; }

    /// <summary>The entry that was stored; <see langword="null"/> for other changes.</summary>
    public Guid? EntryId { get; init; }
}

/// <summary>What a change is about.</summary>
public enum ChangeKind
{
    Publication,
    Confirmation,
    Correction,
    Import,
    Reading,
    Person,
}
