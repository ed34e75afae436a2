namespace EstateWater.Agronomy.Weather;

/// <summary>A day's weather. A value that was not measured is <see langword="null"/>, never zero.</summary>
/// <param name="Date">The local civil day.</param>
/// <param name="TMaxC">Highest air temperature. [°C]</param>
/// <param name="TMinC">Lowest air temperature. [°C]</param>
/// <param name="RhMaxPct">Highest relative humidity, 0–100. [%]</param>
/// <param name="RhMinPct">Lowest relative humidity, 0–100. [%]</param>
/// <param name="WindMPerS">Mean wind at the anemometer's height. [m/s]</param>
/// <param name="SolarMjPerM2">Global radiation. [MJ/m²]</param>
/// <param name="RainMm">Rain. [mm]</param>
public sealed record DailyWeather(
    DateOnly Date,
    double TMaxC,
    double TMinC,
    double? RhMaxPct = null,
    double? RhMinPct = null,
    double? WindMPerS = null,
    double? SolarMjPerM2 = null,
    double? RainMm = null);

/// <summary>Where a weather station stands.</summary>
/// <param name="LatitudeDegrees">North positive, −90 to 90. [degrees]</param>
/// <param name="LongitudeDegrees">East positive, −180 to 180. [degrees]</param>
/// <param name="ElevationM">Above sea level. [m]</param>
/// <param name="WindHeightM">Anemometer above ground. [m]</param>
public sealed record StationSite(double LatitudeDegrees, double LongitudeDegrees, double ElevationM, double WindHeightM = 2);
