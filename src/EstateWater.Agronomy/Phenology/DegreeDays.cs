using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>Degree days of one day from its extremes, by the usual methods. [°C·d]</summary>
/// <remarks>The methods give different sums for the same day: name the one used wherever a sum is shown. An upper threshold is a horizontal cutoff.</remarks>
[Method("Degree days by simple average", Source = "McMaster & Wilhelm (1997), Agric. For. Meteorol. 87: 291–300, methods 1 and 2", Check = "Table 1 of the paper")]
[Method("Degree days by single and double sine, horizontal cutoff", Source = "Baskerville & Emin (1969), Ecology 50: 514–517; Allen (1976), Environ. Entomol. 5: 388–396; Zalom et al. (1983), UC Leaflet 21373", Check = "Zalom et al. (1983), Table 7")]
public static class DegreeDays
{
    /// <summary>Mean of the extremes less the base: McMaster and Wilhelm's method 1. [°C·d]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="baseC">Base, −20 to 40. [°C]</param>
    /// <param name="upperC">Cap of the mean, above the base; null for none. [°C]</param>
    /// <remarks>DD = max(0, min(M, upper) − base), M = (T_max + T_min)/2.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double AverageOfMean(double tMinC, double tMaxC, double baseC, double? upperC = null)
    {
        Check(tMinC, tMaxC, baseC, upperC);
        return Math.Max(0, Math.Min((tMaxC + tMinC) / 2, upperC ?? double.PositiveInfinity) - baseC);
    }

    /// <summary>Extremes moved to the base and the cap first, then averaged: McMaster and Wilhelm's method 2. [°C·d]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="baseC">Base, −20 to 40. [°C]</param>
    /// <param name="upperC">Cap of each extreme, above the base; null for none. [°C]</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double AverageOfClippedExtremes(double tMinC, double tMaxC, double baseC, double? upperC = null)
    {
        Check(tMinC, tMaxC, baseC, upperC);
        var upper = upperC ?? double.PositiveInfinity;
        return ((Math.Clamp(tMaxC, baseC, upper) + Math.Clamp(tMinC, baseC, upper)) / 2) - baseC;
    }

    /// <summary>Area under a sine through the day's extremes. [°C·d]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="lowerC">Lower threshold, −20 to 40. [°C]</param>
    /// <param name="upperC">Upper threshold, above the lower; null for none. [°C]</param>
    /// <remarks>
    /// <para>D(t) = (1/π)[(M − t)(π/2 − θ) + α cos θ], θ = asin((t − M)/α), α = (T_max − T_min)/2; 0 below, M − t above.
    /// DD = D(lower) − D(upper): all six cases of Zalom et al. (1983) in one line.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double SingleSine(double tMinC, double tMaxC, double lowerC, double? upperC = null)
    {
        Check(tMinC, tMaxC, lowerC, upperC);
        return Above(lowerC, tMinC, tMaxC) - (upperC is { } upper ? Above(upper, tMinC, tMaxC) : 0);
    }

    /// <summary>Area under two half sines: morning from today's lowest, night to tomorrow's. [°C·d]</summary>
    /// <param name="tMinC">Lowest temperature today. [°C]</param>
    /// <param name="tMaxC">Highest temperature today. [°C]</param>
    /// <param name="nextTMinC">Lowest temperature tomorrow; above today's highest it counts as that. [°C]</param>
    /// <param name="lowerC">Lower threshold, −20 to 40. [°C]</param>
    /// <param name="upperC">Upper threshold, above the lower; null for none. [°C]</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double DoubleSine(double tMinC, double tMaxC, double nextTMinC, double lowerC, double? upperC = null)
    {
        WeatherInput.AirTemperature(nextTMinC);
        return (SingleSine(tMinC, tMaxC, lowerC, upperC) + SingleSine(Math.Min(nextTMinC, tMaxC), tMaxC, lowerC, upperC)) / 2;
    }

    private static double Above(double threshold, double tMin, double tMax)
    {
        var mean = (tMax + tMin) / 2;
        if (tMax <= threshold)
        {
            return 0;
        }

        if (tMin >= threshold)
        {
            return mean - threshold;
        }

        var amplitude = (tMax - tMin) / 2;
        var theta = Math.Asin((threshold - mean) / amplitude);
        return (((mean - threshold) * ((Math.PI / 2) - theta)) + (amplitude * Math.Cos(theta))) / Math.PI;
    }

    private static void Check(double tMinC, double tMaxC, double lowerC, double? upperC)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        Require.InRange(lowerC, -20, 40, "°C", "baseC");
        if (upperC is { } upper)
        {
            Require.InRange(upper, lowerC, 60, "°C, the base being the least", nameof(upperC));
        }
    }
}
