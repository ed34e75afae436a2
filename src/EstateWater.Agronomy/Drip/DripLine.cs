using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Units;

namespace EstateWater.Agronomy.Drip;

/// <summary>Rates, flows and amounts of drip irrigation. A litre on a square metre is a millimetre.</summary>
[Method(
    "Application rate, flow and amounts of drip",
    Source = "A litre on a square metre is a millimetre; Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, pp. 74 and 91",
    Check = "The handbook's 10 m³ a hectare for a millimetre and 100 mm from 150 m³/h in 6.7 h; vines of six by eight feet from the definitions")]
public static class DripLine
{
    /// <summary>Application rate over the whole ground. [mm/h]</summary>
    /// <param name="emitterFlowLPerH">Flow of one emitter, above 0. [L/h]</param>
    /// <param name="emittersPerVine">Above 0; a half stands for one emitter to two vines.</param>
    /// <param name="rowSpacingM">Above 0. [m]</param>
    /// <param name="vineSpacingM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not above 0.</exception>
    public static double ApplicationRateMmPerH(double emitterFlowLPerH, double emittersPerVine, double rowSpacingM, double vineSpacingM) =>
        Require.Above(emitterFlowLPerH, 0, "L/h") * Require.Above(emittersPerVine, 0, "emitters") / GroundPerVineM2(rowSpacingM, vineSpacingM);

    /// <summary>Application rate of lines whose emitters do not follow the vines. [mm/h]</summary>
    /// <param name="emitterFlowLPerH">Flow of one emitter, above 0. [L/h]</param>
    /// <param name="emitterSpacingM">Between emitters on the line, above 0. [m]</param>
    /// <param name="rowSpacingM">Between lines, above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not above 0.</exception>
    public static double LineRateMmPerH(double emitterFlowLPerH, double emitterSpacingM, double rowSpacingM) =>
        Require.Above(emitterFlowLPerH, 0, "L/h") / GroundPerVineM2(rowSpacingM, Require.Above(emitterSpacingM, 0, "m"));

    /// <summary>Ground that belongs to one vine. [m²]</summary>
    /// <param name="rowSpacingM">Above 0. [m]</param>
    /// <param name="vineSpacingM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not above 0.</exception>
    public static double GroundPerVineM2(double rowSpacingM, double vineSpacingM) =>
        Require.Above(rowSpacingM, 0, "m") * Require.Above(vineSpacingM, 0, "m");

    /// <summary>Flow that a whole block takes. [m³/h]</summary>
    /// <param name="areaM2">Above 0. [m²]</param>
    /// <param name="emitterFlowLPerH">Flow of one emitter, above 0. [L/h]</param>
    /// <param name="emittersPerVine">Above 0.</param>
    /// <param name="rowSpacingM">Above 0. [m]</param>
    /// <param name="vineSpacingM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not above 0.</exception>
    public static double BlockFlowM3PerH(double areaM2, double emitterFlowLPerH, double emittersPerVine, double rowSpacingM, double vineSpacingM) =>
        VolumeM3(ApplicationRateMmPerH(emitterFlowLPerH, emittersPerVine, rowSpacingM, vineSpacingM), areaM2);

    /// <summary>Volume of a depth over an area. [m³]</summary>
    /// <param name="depthMm">0 or more. [mm]</param>
    /// <param name="areaM2">Above 0. [m²]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double VolumeM3(double depthMm, double areaM2) =>
        Require.AtLeast(depthMm, 0, "mm") * Require.Above(areaM2, 0, "m²") / 1000;

    /// <summary>Depth of a volume over an area. [mm]</summary>
    /// <param name="volumeM3">0 or more. [m³]</param>
    /// <param name="areaM2">Above 0. [m²]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double DepthMm(double volumeM3, double areaM2) =>
        Require.AtLeast(volumeM3, 0, "m³") * 1000 / Require.Above(areaM2, 0, "m²");

    /// <summary>Litres at each vine. [L]</summary>
    /// <param name="depthMm">Over the whole ground, 0 or more. [mm]</param>
    /// <param name="rowSpacingM">Above 0. [m]</param>
    /// <param name="vineSpacingM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double LitresPerVine(double depthMm, double rowSpacingM, double vineSpacingM) =>
        Require.AtLeast(depthMm, 0, "mm") * GroundPerVineM2(rowSpacingM, vineSpacingM);

    /// <summary>US gallons at each vine. [gal]</summary>
    /// <param name="depthMm">Over the whole ground, 0 or more. [mm]</param>
    /// <param name="rowSpacingM">Above 0. [m]</param>
    /// <param name="vineSpacingM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double GallonsPerVine(double depthMm, double rowSpacingM, double vineSpacingM) =>
        LitresPerVine(depthMm, rowSpacingM, vineSpacingM) / Conversions.LitresPerGallon;

    /// <summary>Depth to apply so that a net depth reaches the roots. [mm]</summary>
    /// <param name="netMm">0 or more. [mm]</param>
    /// <param name="efficiency">Application efficiency, above 0 to 1; the emission uniformity where nothing better is known. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double GrossMm(double netMm, double efficiency) =>
        Require.AtLeast(netMm, 0, "mm") / Require.InRange(efficiency, 0.01, 1, "(share)");

    /// <summary>Depth that reaches the roots of a depth applied. [mm]</summary>
    /// <param name="grossMm">0 or more. [mm]</param>
    /// <param name="efficiency">Above 0 to 1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double NetMm(double grossMm, double efficiency) =>
        Require.AtLeast(grossMm, 0, "mm") * Require.InRange(efficiency, 0.01, 1, "(share)");

    /// <summary>Hours that a depth takes. [h]</summary>
    /// <param name="grossMm">0 or more. [mm]</param>
    /// <param name="rateMmPerH">Above 0. [mm/h]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double HoursFor(double grossMm, double rateMmPerH) =>
        Require.AtLeast(grossMm, 0, "mm") / Require.Above(rateMmPerH, 0, "mm/h");
}
