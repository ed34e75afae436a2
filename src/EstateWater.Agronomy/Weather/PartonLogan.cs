using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Lags of the Parton–Logan course, fitted to a place.</summary>
/// <param name="MaximumLagH">a: of the highest after noon. [h]</param>
/// <param name="NightDecay">b: how fast the night cools. [–]</param>
/// <param name="MinimumLagH">c: of the lowest after sunrise. [h]</param>
public sealed record PartonLoganLags(double MaximumLagH, double NightDecay, double MinimumLagH)
{
    /// <summary>Air at 1.5 m, Denver: Parton &amp; Logan (1981).</summary>
    public static PartonLoganLags Denver { get; } = new(1.86, 2.20, -0.17);

    /// <summary>Mean of five sites in North Carolina: Wann et al. (1985).</summary>
    public static PartonLoganLags NorthCarolina { get; } = new(2.59, 2.2, 1.55);
}

/// <summary>The course of temperature from one lowest to the next: a lagged sine by day, an exponential by night.</summary>
[Method("Hourly temperature from daily extremes (Parton & Logan)", Source = "Parton & Logan (1981), Agric. Meteorol. 23: 205–216; Wann et al. (1985) for the second set of lags", Check = "Independent recomputation of five hours of a day")]
public static class PartonLogan
{
    /// <summary>Temperature at a time after sunrise. [°C]</summary>
    /// <param name="tMinC">Lowest. [°C]</param>
    /// <param name="tMaxC">Highest. [°C]</param>
    /// <param name="dayLengthH">Y: from rise to set, 4 to 20. [h]</param>
    /// <param name="hoursAfterSunrise">c to 24 + c, c being the lag of the lowest. [h]</param>
    /// <param name="lags">Fitted to a place; null for Denver's.</param>
    /// <remarks>
    /// <para>Day: T = T_min + (T_max − T_min) sin[π m ∕ (Y + 2a)], m hours since the lowest. Night: T = T_min + (T_s − T_min) exp(−b n ∕ Z), n hours
    /// since sunset, Z = 24 − Y. The night tends to the same lowest and does not quite reach it.</para>
    /// <para>Lags: maximum a, decay b, minimum c. They are found permuted in print.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double TemperatureC(double tMinC, double tMaxC, double dayLengthH, double hoursAfterSunrise, PartonLoganLags? lags = null)
    {
        var (a, b, c) = lags ?? PartonLoganLags.Denver;
        WeatherInput.DayExtremes(tMinC, tMaxC);
        Require.InRange(dayLengthH, 4, 20, "h");
        Require.InRange(hoursAfterSunrise, c, 24 + c, "h");
        var range = tMaxC - tMinC;
        var light = Math.Min(hoursAfterSunrise, dayLengthH);
        var day = tMinC + (range * Math.Sin(Math.PI * (light - c) / (dayLengthH + (2 * a))));
        return tMinC + ((day - tMinC) * Math.Exp(-b * (hoursAfterSunrise - light) / (24 - dayLengthH)));
    }
}
