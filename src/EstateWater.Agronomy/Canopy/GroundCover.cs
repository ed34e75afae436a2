using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Canopy;

/// <summary>Share of the ground that a canopy covers from above, and what it shades when the sun stands lower.</summary>
[Method(
    "Effective ground cover at solar noon",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 9, Box 18",
    Check = "FAO-56 Examples 41 and 42")]
public static class GroundCover
{
    /// <summary>Effective ground cover of rows at solar noon, 0–1. [–]</summary>
    /// <param name="cover">Share covered as seen from above, 0–1. [–]</param>
    /// <param name="heightToWidth">Height to width of the canopy as the sun sees it, see <see cref="HeightToWidth"/>; 0 for rows north to south. [–]</param>
    /// <param name="solarElevationRadians">Elevation of the sun at noon, above 0 to π∕2. [rad]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56, chapter 9, Box 18: fc_eff = fc(1 + HWR∕tan η), at most 1.</remarks>
    public static double EffectiveOfRows(double cover, double heightToWidth, double solarElevationRadians)
    {
        Require.InRange(cover, 0, 1, "(share of the ground)");
        Require.AtLeast(heightToWidth, 0, "(height to width)");
        Require.InRange(solarElevationRadians, 0.01, Math.PI / 2, "rad");
        return Math.Min(1, cover * (1 + (heightToWidth / Math.Tan(solarElevationRadians))));
    }

    /// <summary>Effective ground cover of round canopies at solar noon, 0–1. [–]</summary>
    /// <param name="cover">Share covered as seen from above, 0–1. [–]</param>
    /// <param name="solarElevationRadians">Elevation of the sun at noon, above 0 to π∕2. [rad]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56, chapter 9: fc_eff = fc∕sin η, at most 1.</remarks>
    public static double EffectiveOfRoundCanopies(double cover, double solarElevationRadians) =>
        Math.Min(1, Require.InRange(cover, 0, 1, "(share of the ground)") / Math.Sin(Require.InRange(solarElevationRadians, 0.01, Math.PI / 2, "rad")));

    /// <summary>Height to width of a row's canopy as the noon sun sees it. [–]</summary>
    /// <param name="canopyHeightM">Above 0. [m]</param>
    /// <param name="canopyWidthM">Above 0. [m]</param>
    /// <param name="rowAngleFromEastWestDegrees">0 for rows east to west, 90 for north to south. [degrees]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56, chapter 9, Box 18: HWR = h·cos Γ ∕ width.</remarks>
    public static double HeightToWidth(double canopyHeightM, double canopyWidthM, double rowAngleFromEastWestDegrees)
    {
        var angle = Require.InRange(rowAngleFromEastWestDegrees, 0, 90, "degrees") * Math.PI / 180;
        return Require.Above(canopyHeightM, 0, "m") * Math.Cos(angle) / Require.Above(canopyWidthM, 0, "m");
    }

    /// <summary>Elevation of the sun at solar noon. [rad]</summary>
    /// <param name="latitudeDegrees">North positive, −66 to 66. [degrees]</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56 Eq. 24: δ = 0.409 sin(2πJ∕365 − 1.39); sin η = sin φ sin δ + cos φ cos δ.</remarks>
    public static double NoonElevation(double latitudeDegrees, int dayOfYear)
    {
        var latitude = Require.InRange(latitudeDegrees, -66, 66, "degrees") * Math.PI / 180;
        var declination = ExtraterrestrialRadiation.DeclinationRad(dayOfYear);
        return Math.Asin((Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination)));
    }

    /// <summary>Shaded fraction of a continuous canopy from the width of its shade at solar noon, 0–1. [–]</summary>
    /// <param name="shadeWidthM">Mean width of the shade across the row, 0 to the row spacing. [m]</param>
    /// <param name="rowSpacingM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double ShadedFractionFromWidth(double shadeWidthM, double rowSpacingM)
    {
        Require.Above(rowSpacingM, 0, "m");
        return Require.InRange(shadeWidthM, 0, rowSpacingM, "m (not above the row spacing)") / rowSpacingM;
    }
}
