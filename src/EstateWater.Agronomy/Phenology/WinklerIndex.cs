using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>Heat summation of Amerine and Winkler, and its regions.</summary>
[Method("Winkler heat summation and regions", Source = "Amerine & Winkler (1944), Hilgardia 15: 493–675; Winkler et al. (1974), General Viticulture", Check = "Hand sums in both hemispheres; region limits of the table, 2500 to 4000 °F·d")]
public static class WinklerIndex
{
    private static readonly double[] UpperLimitsFahrenheit = [2500, 3000, 3500, 4000];

    /// <summary>Sum over April to October, or October to April in the south. [°C·d]</summary>
    /// <param name="days">Each date once, any order; others are left out.</param>
    /// <param name="year">Year of the harvest.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <remarks>Σ max(0, (T_max + T_min)/2 − 10 °C).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <exception cref="ArgumentException">A date given twice.</exception>
    public static SeasonSum Of(IEnumerable<DailyWeather> days, int year, double latitudeDegrees)
    {
        var (from, to) = Season.IsSouthern(latitudeDegrees)
            ? (new DateOnly(year - 1, 10, 1), new DateOnly(year, 4, 30))
            : (new DateOnly(year, 4, 1), new DateOnly(year, 10, 31));
        return SeasonSum.Of(days, from, to, day => DegreeDays.AverageOfMean(day.TMinC, day.TMaxC, 10));
    }

    /// <summary>Region I to V as 1 to 5; equal to a limit belongs to the cooler one.</summary>
    /// <param name="degreeDays">Sum of a whole season, 0 to 6000. [°C·d]</param>
    /// <remarks>Limits 2500, 3000, 3500 and 4000 °F·d. A sum is converted by 1.8 alone, without 32.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static int Region(double degreeDays)
    {
        var fahrenheit = Require.InRange(degreeDays, 0, 6000, "°C·d") * 1.8;
        return 1 + UpperLimitsFahrenheit.Count(limit => fahrenheit > limit);
    }
}
