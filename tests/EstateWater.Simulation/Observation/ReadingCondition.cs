namespace EstateWater.Simulation.Observation;

/// <summary>How a set of readings was taken; the default is by the book.</summary>
public sealed record ReadingCondition
{
    /// <summary>Start of the set after solar noon; null takes the crew's round. [h]</summary>
    public double? HoursAfterNoon { get; init; }

    /// <summary>Share of leaves taken from the shade.</summary>
    public double ShadedShare { get; init; }

    /// <summary>Spread between leaves over the usual one.</summary>
    public double Spread { get; init; } = 1;

    /// <summary>Longest time from cut to chamber. [s]</summary>
    public int LongestDelayS { get; init; } = 48;

    public string? Note { get; init; }
}
