namespace EstateWater.Data.Model;

/// <summary>The round of readings of one day: kept as it was planned, so that it stays the same while it is walked.</summary>
public sealed class PlannedRound
{
    public int Id { get; init; }

    /// <summary>The estate's day; one round a day.</summary>
    public required DateOnly Date { get; init; }

    public required DateTimeOffset MadeAt { get; set; }

    /// <summary>Who changed it last; <see langword="null"/> where nobody did or nobody said so.</summary>
    public string? ChangedBy { get; set; }

    /// <summary>The round itself, as JSON.</summary>
    public required string Document { get; set; }
}
