namespace EstateWater.Web.Features.Sets;

/// <summary>The sets that stand now, with who published the latest plan and what they said.</summary>
public sealed record StandingSets
{
    /// <summary>In order of start; empty until a plan is published.</summary>
    public required IReadOnlyList<SetLine> Lines { get; init; }

    /// <summary>Who published last.</summary>
    public string PublishedBy { get; init; } = "";

    /// <summary>When, estate time.</summary>
    public DateTimeOffset PublishedAt { get; init; }

    /// <summary>What they said to the irrigators.</summary>
    public string? Note { get; init; }

    /// <summary>The moment it was read, estate time.</summary>
    public required DateTimeOffset Now { get; init; }
}
