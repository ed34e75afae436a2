using System.Globalization;
using System.Runtime.CompilerServices;

namespace EstateWater.Agronomy.Methods;

/// <summary>Refuses numbers that no measurement can be.</summary>
internal static class Require
{
    /// <summary>Gives the value back when it lies within the range; NaN lies in none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double InRange(double value, double lowest, double highest, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Written as "not inside" so that NaN is refused too.
        if (!(value >= lowest && value <= highest))
        {
            throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"Expected {lowest} to {highest} {unit}."));
        }

        return value;
    }

    /// <summary>An air temperature that occurs on earth. [°C]</summary>
    public static double AirTemperature(double celsius, [CallerArgumentExpression(nameof(celsius))] string name = "") =>
        InRange(celsius, -60, 60, "°C", name);

    /// <summary>A relative humidity. [%]</summary>
    public static double Humidity(double percent, [CallerArgumentExpression(nameof(percent))] string name = "") =>
        InRange(percent, 0, 100, "%", name);

    /// <summary>A latitude, north positive. [degrees]</summary>
    public static double Latitude(double degrees, [CallerArgumentExpression(nameof(degrees))] string name = "") =>
        InRange(degrees, -90, 90, "degrees", name);

    /// <summary>A longitude, east positive. [degrees]</summary>
    public static double Longitude(double degrees, [CallerArgumentExpression(nameof(degrees))] string name = "") =>
        InRange(degrees, -180, 180, "degrees", name);

    /// <summary>A day of the year. [1–366]</summary>
    public static int DayOfYear(int day, [CallerArgumentExpression(nameof(day))] string name = "") =>
        (int)InRange(day, 1, 366, "as day of the year", name);

    /// <summary>Lowest and highest temperature of one day, in that order.</summary>
    public static void DayExtremes(double tMinC, double tMaxC)
    {
        AirTemperature(tMinC);
        InRange(tMaxC, tMinC, 60, "°C, the day's lowest being the least");
    }
}
