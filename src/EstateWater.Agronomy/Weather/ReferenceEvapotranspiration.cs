using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Reference evapotranspiration from a station's day. [mm]</summary>
[Method("Daily reference evapotranspiration, with FAO's rules for missing data", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 6 and chapter 3 (Eq. 48, 50; wind 2 m/s, at least 0.5 m/s)", Check = "FAO-56 Examples 18 and 20")]
public static class ReferenceEvapotranspiration
{
    /// <summary>ET_o of a day.</summary>
    /// <param name="day">The day; what is missing is estimated and said so in the result.</param>
    /// <param name="site">The station.</param>
    /// <param name="radiationCoefficient">k_Rs where radiation is missing, 0.10 to 0.25: 0.16 inland, 0.19 near a coast. [°C^−0.5]</param>
    /// <remarks>
    /// <para>Clear sky by Allen et al. (1998) Eq. 37, soil heat of a day zero. The day of the year is that of the civil date.</para>
    /// <para>Missing humidity: T_min is the dew point (Eq. 48). Missing radiation: Eq. 50, capped at the clear sky. Missing wind: 2 m/s.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value of the day or the site is outside its range; the message names it.</exception>
    public static DailyReferenceEt Daily(DailyWeather day, StationSite site, double radiationCoefficient = SolarRadiation.InteriorCoefficient)
    {
        ArgumentNullException.ThrowIfNull(day);
        ArgumentNullException.ThrowIfNull(site);
        var vapour = ActualVapourPressure.OfDayKpa(day, out var humidity);
        var extraterrestrial = ExtraterrestrialRadiation.DailyMjPerM2(site.LatitudeDegrees, day.Date.DayOfYear);
        var clearSky = SolarRadiation.ClearSkyMjPerM2(extraterrestrial, site.ElevationM);
        var solar = day.SolarMjPerM2
            ?? SolarRadiation.FromTemperatureRangeMjPerM2(extraterrestrial, clearSky, day.TMinC, day.TMaxC, radiationCoefficient);
        var clearness = NetRadiation.Clearness(solar, clearSky);
        var net = NetRadiation.ShortwaveMjPerM2(solar) - NetRadiation.LongwaveDailyMjPerM2(day.TMinC, day.TMaxC, vapour, clearness);
        var wind = day.WindMPerS is { } measured ? WindSpeed.At2MMPerS(measured, site.WindHeightM) : WindSpeed.WhenMissingMPerS;
        var mm = PenmanMonteith.DailyMm(
            (day.TMaxC + day.TMinC) / 2,
            net,
            soilHeatMjPerM2: 0,
            AirPressure.PsychrometricKpaPerC(AirPressure.AtElevationKpa(site.ElevationM)),
            Math.Max(WindSpeed.LeastMPerS, wind),
            VapourPressureDeficit.DailyKpa(day));
        return new DailyReferenceEt(mm, humidity, OriginOf(day.SolarMjPerM2), OriginOf(day.WindMPerS));
    }

    private static InputOrigin OriginOf(double? measured) => measured is null ? InputOrigin.Estimated : InputOrigin.Measured;
}
