namespace EstateWater.Agronomy.Weather;

/// <summary>Reference evapotranspiration of one day, and which of its inputs were measured.</summary>
/// <param name="Mm">ET_o, never negative. [mm]</param>
/// <param name="Humidity">Measured, or the lowest temperature taken as dew point.</param>
/// <param name="Radiation">Measured, or estimated from the temperature range.</param>
/// <param name="Wind">Measured, or taken as 2 m/s.</param>
public sealed record DailyReferenceEt(double Mm, InputOrigin Humidity, InputOrigin Radiation, InputOrigin Wind)
{
    /// <summary>Whether anything but temperature had to be estimated.</summary>
    public bool AnyEstimated =>
        Humidity == InputOrigin.Estimated || Radiation == InputOrigin.Estimated || Wind == InputOrigin.Estimated;
}
