namespace EstateWater.Agronomy.Weather;

/// <summary>One hour at a station.</summary>
/// <param name="Start">Start of the hour, any offset.</param>
/// <param name="TempC">Mean air temperature. [°C]</param>
/// <param name="RhPct">Mean relative humidity, 0–100. [%]</param>
/// <param name="WindMPerS">Mean wind at the anemometer's height. [m/s]</param>
/// <param name="SolarMjPerM2">Global radiation of the hour, 0 to 5. [MJ/m²]</param>
public sealed record HourlyWeather(DateTimeOffset Start, double TempC, double RhPct, double WindMPerS, double SolarMjPerM2);
