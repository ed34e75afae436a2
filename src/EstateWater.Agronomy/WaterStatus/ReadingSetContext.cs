namespace EstateWater.Agronomy.WaterStatus;

/// <summary>What the checks of a reading set may know beside its leaves.</summary>
public sealed record ReadingSetContext
{
    /// <summary>Solar noon of the day at the block; <see langword="null"/> when not known.</summary>
    public DateTimeOffset? SolarNoon { get; init; }

    /// <summary>Sunrise of the day at the block, for predawn readings; <see langword="null"/> when not known.</summary>
    public DateTimeOffset? Sunrise { get; init; }

    /// <summary>The block's set before, of the same measure; <see langword="null"/> when there is none.</summary>
    public PreviousReadingSet? Previous { get; init; }

    /// <summary>Tension of a vine without stress at the vapour pressure deficit of the reading; <see langword="null"/> when not known. [MPa, positive]</summary>
    public double? BaselineTensionMpa { get; init; }
}

/// <summary>A set read before.</summary>
/// <param name="TakenAt">When its first leaf was read.</param>
/// <param name="MeanMpa">Its mean tension. [MPa, positive]</param>
public sealed record PreviousReadingSet(DateTimeOffset TakenAt, double MeanMpa);
