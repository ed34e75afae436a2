using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>How far the light at solar noon opens stomata, against a clear day. [–], 0–1</summary>
/// <remarks>
/// <para>Under cloud the same dry air draws less water from a leaf, and its tension falls (Myburgh 2018, p. 159).</para>
/// <para>(1 − exp(−R/k)) / (1 − exp(−R_clear/k)), R the radiation at noon: the day's sum as half a sine over the hours of daylight.
/// Saturating in light as the response of Jarvis (1976); the form and k, a quarter of full sun, are ours.</para>
/// </remarks>
[Method(
    "Light at midday",
    Source = "Jarvis (1976), Phil. Trans. R. Soc. B 273:593–610 (from memory, to be checked), for a saturating answer of stomata to light; its form and the quarter of full sun are this program's",
    Check = "By hand from the radiation of FAO-56 Example 10; 1 under a clear sky, never more, and never rising as the day darkens")]
public static class MiddayLight
{
    /// <summary>k: radiation at which stomata are open by 63 %. [W/m²]; ours.</summary>
    public const double OpeningWPerM2 = 250;

    /// <summary>Of a day.</summary>
    /// <param name="day">The day; 1 where its radiation is not known.</param>
    /// <param name="site">Where it was measured.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double Share(DailyWeather day, StationSite site)
    {
        ArgumentNullException.ThrowIfNull(day);
        ArgumentNullException.ThrowIfNull(site);
        if (day.SolarMjPerM2 is not { } solar)
        {
            return 1;
        }

        var (latitude, dayOfYear) = (site.LatitudeDegrees, day.Date.DayOfYear);
        var clear = SolarRadiation.ClearSkyMjPerM2(ExtraterrestrialRadiation.DailyMjPerM2(latitude, dayOfYear), site.ElevationM);
        var daylightH = ExtraterrestrialRadiation.DaylightHours(latitude, dayOfYear);
        return clear > 0 ? Math.Min(1, Opening(Require.InRange(solar, 0, 60, "MJ/m²", "radiation"), daylightH) / Opening(clear, daylightH)) : 1;
    }

    private static double Opening(double mjPerM2, double daylightH) => 1 - Math.Exp(-NoonWPerM2(mjPerM2, daylightH) / OpeningWPerM2);

    private static double NoonWPerM2(double mjPerM2, double daylightH) => mjPerM2 * 1e6 / 3600 * Math.PI / (2 * daylightH);
}
