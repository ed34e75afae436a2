using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Reference evapotranspiration of one hour, and what it was made from.</summary>
/// <param name="Mm">ET_o, never negative. [mm/h]</param>
/// <param name="NetRadiationMjPerM2">R_n. [MJ m⁻² h⁻¹]</param>
/// <param name="SoilHeatMjPerM2">G. [MJ m⁻² h⁻¹]</param>
public sealed record HourlyReferenceEt(double Mm, double NetRadiationMjPerM2, double SoilHeatMjPerM2);

/// <summary>Reference evapotranspiration by the hour.</summary>
[Method("FAO-56 Penman–Monteith by the hour", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 53; low sun after ASCE-EWRI (2005)", Check = "FAO-56 Example 19, night and afternoon")]
public static class HourlyReferenceEvapotranspiration
{
    private const double LowSunRad = 0.3;

    /// <summary>ET_o of an hour. [mm/h]</summary>
    /// <param name="hour">The hour.</param>
    /// <param name="site">The station.</param>
    /// <param name="clearnessAtNight">R_s/R_so of the hours before sunset, 0.3 to 1: it stands in at night and while the sun is lower than 0.3 rad. [–]</param>
    /// <remarks>
    /// <para>ET_o = [0.408 Δ (R_n − G) + γ 37 ∕ (T + 273) u₂ (e° − e_a)] ∕ [Δ + γ (1 + 0.34 u₂)]; G = 0.1 R_n by day, 0.5 R_n by night.</para>
    /// <para>FAO's form of 1998. ASCE-EWRI (2005) has 0.24 by day and 0.96 by night in place of 0.34: do not mix them in one series.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static HourlyReferenceEt Of(HourlyWeather hour, StationSite site, double clearnessAtNight = 0.8)
    {
        ArgumentNullException.ThrowIfNull(hour);
        ArgumentNullException.ThrowIfNull(site);
        Require.InRange(clearnessAtNight, 0.3, 1, "as R_s/R_so");
        Require.InRange(hour.SolarMjPerM2, 0, 5, "MJ/m²");
        var sun = HourlySun.Of(hour.Start, site.LatitudeDegrees, site.LongitudeDegrees);
        var clearSky = SolarRadiation.ClearSkyMjPerM2(sun.ExtraterrestrialMjPerM2, site.ElevationM);
        var high = sun.SinElevation >= Math.Sin(LowSunRad);
        var clearness = high ? NetRadiation.Clearness(hour.SolarMjPerM2, clearSky) : clearnessAtNight;
        var saturation = SaturationVapourPressure.AtKpa(hour.TempC);
        var vapour = saturation * WeatherInput.Humidity(hour.RhPct) / 100;
        var net = NetRadiation.ShortwaveMjPerM2(hour.SolarMjPerM2) - NetRadiation.LongwaveHourlyMjPerM2(hour.TempC, vapour, clearness);
        var heat = (sun.ExtraterrestrialMjPerM2 > 0 ? 0.1 : 0.5) * net;
        var gamma = AirPressure.PsychrometricKpaPerC(AirPressure.AtElevationKpa(site.ElevationM));
        var wind = Math.Max(WindSpeed.LeastMPerS, WindSpeed.At2MMPerS(hour.WindMPerS, site.WindHeightM));
        return new HourlyReferenceEt(PenmanMonteith.HourlyMm(hour.TempC, net, heat, gamma, wind, saturation - vapour), net, heat);
    }
}
