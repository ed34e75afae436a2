namespace EstateWater.Agronomy.Outlook;

/// <summary>What drives a block's root zone day by day through one season: a value a day, from the season's first day on.</summary>
/// <remarks>
/// Water that is applied in the evening of a day, or before noon of the next, stands on that first day: it is in the
/// soil at the next solar noon.
/// </remarks>
public sealed record SeasonForcing
{
    /// <summary>First day of the arrays.</summary>
    public required DateOnly FirstDay { get; init; }

    /// <summary>Reference evapotranspiration, ≥ 0. [mm/d]</summary>
    public required double[] Et0Mm { get; init; }

    /// <summary>Vapour pressure deficit near solar noon, ≥ 0. [kPa]</summary>
    public required double[] VpdKpa { get; init; }

    /// <summary>How far the light at noon opens stomata, 0–1 (<see cref="Weather.MiddayLight"/>).</summary>
    public required double[] LightShare { get; init; }

    /// <summary>Rain, ≥ 0. [mm]</summary>
    public required double[] RainMm { get; init; }

    /// <summary>Water applied over the block's whole area, ≥ 0. [mm]</summary>
    public required double[] AppliedMm { get; init; }

    /// <summary>Share of the ground shaded at solar noon, 0–1.</summary>
    public required double[] ShadedFraction { get; init; }

    /// <summary>Number of days.</summary>
    public int Days => Et0Mm.Length;

    /// <summary>Position of a day in the arrays; negative or past the end when outside.</summary>
    public int IndexOf(DateOnly day) => day.DayNumber - FirstDay.DayNumber;
}
