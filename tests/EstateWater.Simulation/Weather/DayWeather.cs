namespace EstateWater.Simulation.Weather;

/// <summary>One day of weather, measured or forecast.</summary>
public sealed record DayWeather(
    DateOnly Date,
    double TMaxC,
    double TMinC,
    double RhMaxPct,
    double RhMinPct,
    double WindMPerS,
    double SolarMjPerM2,
    double RainMm)
{
    /// <summary>Vapour pressure of the air, steady over the day. [kPa]</summary>
    public double VapourPressureKPa =>
        ((Saturation(TMinC) * RhMaxPct) + (Saturation(TMaxC) * RhMinPct)) / 200;

    /// <summary>Saturation vapour pressure (Tetens 1930). [kPa]</summary>
    public static double Saturation(double celsius) => 0.6108 * Math.Exp(17.27 * celsius / (celsius + 237.3));
}
