using System.Runtime.CompilerServices;
using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Guards of what stations and sites state: each refuses what cannot be, by name.</summary>
internal static class WeatherInput
{
    /// <summary>An air temperature that occurs on earth. [°C]</summary>
    public static double AirTemperature(double celsius, [CallerArgumentExpression(nameof(celsius))] string name = "") =>
        Require.InRange(celsius, -60, 60, "°C", name);

    /// <summary>A relative humidity. [%]</summary>
    public static double Humidity(double percent, [CallerArgumentExpression(nameof(percent))] string name = "") =>
        Require.InRange(percent, 0, 100, "%", name);

    /// <summary>A latitude, north positive. [degrees]</summary>
    public static double Latitude(double degrees, [CallerArgumentExpression(nameof(degrees))] string name = "") =>
        Require.InRange(degrees, -90, 90, "degrees", name);

    /// <summary>A longitude, east positive. [degrees]</summary>
    public static double Longitude(double degrees, [CallerArgumentExpression(nameof(degrees))] string name = "") =>
        Require.InRange(degrees, -180, 180, "degrees", name);

    /// <summary>A day of the year. [1–366]</summary>
    public static int DayOfYear(int day, [CallerArgumentExpression(nameof(day))] string name = "") =>
        (int)Require.InRange(day, 1, 366, "as day of the year", name);

    /// <summary>Lowest and highest temperature of one day, in that order.</summary>
    public static void DayExtremes(double tMinC, double tMaxC)
    {
        AirTemperature(tMinC);
        Require.InRange(tMaxC, tMinC, 60, "°C, the day's lowest being the least");
    }
}
