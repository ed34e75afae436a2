using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>Heliothermal index of Huglin.</summary>
[Method("Huglin index", Source = "Huglin (1978), C. R. Acad. Agric. Fr. 64: 1117–1126; day-length coefficient by latitude as documented by xclim", Check = "Day of 30/14 °C: 16.0, at 43° 16.48; coefficient table")]
public static class HuglinIndex
{
    /// <summary>Sum over April to September, or October to March in the south. [°C·d]</summary>
    /// <param name="days">Each date once, any order; others are left out.</param>
    /// <param name="year">Year of the harvest.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="coefficient">k, 0.9 to 1.2; null for the table's. [–]</param>
    /// <remarks>HI = k Σ max(0, [(T_mean − 10) + (T_max − 10)]/2).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <exception cref="ArgumentException">A date given twice.</exception>
    public static SeasonSum Of(IEnumerable<DailyWeather> days, int year, double latitudeDegrees, double? coefficient = null)
    {
        var k = Require.InRange(coefficient ?? DayLengthCoefficient(latitudeDegrees), 0.9, 1.2, "as k", nameof(coefficient));
        var (from, to) = Season.IsSouthern(latitudeDegrees)
            ? (new DateOnly(year - 1, 10, 1), new DateOnly(year, 3, 31))
            : (new DateOnly(year, 4, 1), new DateOnly(year, 9, 30));
        return SeasonSum.Of(days, from, to, day => k * OfDay(day.TMinC, day.TMaxC));
    }

    /// <summary>One day's share without the coefficient. [°C·d]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double OfDay(double tMinC, double tMaxC)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        return Math.Max(0, ((((tMaxC + tMinC) / 2) - 10) + (tMaxC - 10)) / 2);
    }

    /// <summary>k: for the longer summer days at higher latitudes. [–]</summary>
    /// <param name="latitudeDegrees">Either hemisphere. [degrees]</param>
    /// <remarks>1.00 up to 40°, 1.02 to 42°, 1.03 to 44°, 1.04 to 46°, 1.05 to 48°, 1.06 to 50°. Undefined beyond; held at 1.06 here.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90 to 90, or not a number.</exception>
    public static double DayLengthCoefficient(double latitudeDegrees) => Math.Abs(WeatherInput.Latitude(latitudeDegrees)) switch
    {
        <= 40 => 1.00,
        <= 42 => 1.02,
        <= 44 => 1.03,
        <= 46 => 1.04,
        <= 48 => 1.05,
        _ => 1.06,
    };
}
