using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>Water in a soil profile from water contents at depths. The span counts: name it beside the number.</summary>
/// <remarks>A tube near a dripper tells of the wetted soil, not of the field.</remarks>
[Method(
    "Profile water by the trapezoid and by the layer rule",
    Source = "Haverkamp, Vauclin & Vachaud (1984), Soil Sci. 137:78–90, for integrating probe profiles; the two rules are textbook",
    Check = "0.12 to 0.25 m³/m³ at six depths: 298.5 mm to 1.50 m by trapezoid, 336.0 mm to 1.65 m by layers, by hand")]
public static class ProfileWater
{
    /// <summary>Water from the surface to the deepest reading, by trapezoids. [mm]</summary>
    /// <param name="depthsM">From the top down, above 0. [m]</param>
    /// <param name="waterContents">As many, 0–1. [m³/m³]</param>
    /// <exception cref="ArgumentOutOfRangeException">None, not as many, not from the top down, or outside their range.</exception>
    /// <remarks>The topmost value is held to the surface.</remarks>
    public static double TrapezoidMm(IReadOnlyList<double> depthsM, IReadOnlyList<double> waterContents)
    {
        Validate(depthsM, waterContents);
        return ToDepthMm(depthsM, waterContents, depthsM[^1]);
    }

    /// <summary>Water from the surface to a depth, by trapezoids. [mm]</summary>
    /// <param name="depthsM">From the top down, above 0. [m]</param>
    /// <param name="waterContents">As many, 0–1. [m³/m³]</param>
    /// <param name="toDepthM">Above 0, at most 10. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">None, not as many, not from the top down, or outside their range.</exception>
    /// <remarks>The topmost value is held to the surface, the deepest one to the depth asked for.</remarks>
    public static double ToDepthMm(IReadOnlyList<double> depthsM, IReadOnlyList<double> waterContents, double toDepthM)
    {
        Validate(depthsM, waterContents);
        Require.InRange(toDepthM, 0.01, 10, "m");
        double sum = 0, above = 0, contentAbove = waterContents[0];
        for (var i = 0; i < depthsM.Count && above < toDepthM; i++)
        {
            var below = Math.Min(depthsM[i], toDepthM);
            var content = contentAbove + ((below - above) / (depthsM[i] - above) * (waterContents[i] - contentAbove));
            sum += (below - above) * (contentAbove + content) / 2;
            (above, contentAbove) = (below, content);
        }

        return 1000 * (sum + (Math.Max(0, toDepthM - above) * contentAbove));
    }

    /// <summary>Water from the surface to the bottom of the last layer, each reading standing for the layer halfway to its neighbours. [mm]</summary>
    /// <param name="depthsM">From the top down, above 0. [m]</param>
    /// <param name="waterContents">As many, 0–1. [m³/m³]</param>
    /// <param name="bottomM">Bottom of the last layer, not above the deepest reading. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">None, not as many, not from the top down, or outside their range.</exception>
    public static double LayersMm(IReadOnlyList<double> depthsM, IReadOnlyList<double> waterContents, double bottomM)
    {
        Validate(depthsM, waterContents);
        Require.InRange(bottomM, depthsM[^1], 10, "m (not above the deepest reading)");
        double sum = 0, top = 0;
        for (var i = 0; i < depthsM.Count; i++)
        {
            var bottom = i == depthsM.Count - 1 ? bottomM : (depthsM[i] + depthsM[i + 1]) / 2;
            sum += (bottom - top) * waterContents[i];
            top = bottom;
        }

        return 1000 * sum;
    }

    private static void Validate(IReadOnlyList<double> depthsM, IReadOnlyList<double> waterContents)
    {
        Require.Values(depthsM, 1);
        Require.Values(waterContents, 1);
        Require.InRange(waterContents.Count, depthsM.Count, depthsM.Count, "water contents, one for each depth", nameof(waterContents));
        for (var i = 0; i < depthsM.Count; i++)
        {
            Require.Above(depthsM[i], i == 0 ? 0 : depthsM[i - 1], "m (from the top down)", nameof(depthsM));
            Require.InRange(waterContents[i], 0, 1, "m³/m³", nameof(waterContents));
        }
    }
}
