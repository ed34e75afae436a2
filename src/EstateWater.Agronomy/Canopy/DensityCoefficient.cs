using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Canopy;

/// <summary>Basal crop coefficient from how densely the canopy covers the ground.</summary>
[Method(
    "Basal crop coefficient from ground cover",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 98–102; Allen & Pereira (2009), Irrig. Sci. 28:17–34",
    Check = "FAO-56 Examples 41 and 43; the density factor by hand")]
public static class DensityCoefficient
{
    /// <summary>Basal coefficient of bare, dry ground, as in the examples of FAO-56, chapter 9. [–]</summary>
    public const double BareGround = 0.15;

    /// <summary>Basal coefficient of the crop if it covered all ground. [–]</summary>
    /// <param name="heightM">Height of the crop, above 0 to 10. [m]</param>
    /// <param name="windAt2M">Mean wind, held to 1–6. [m/s]</param>
    /// <param name="rhMinPct">Mean of the daily lowest humidity, held to 20–80. [%]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56 Eq. 100–101: min(1.0 + 0.1h, 1.20) + [0.04(u₂ − 2) − 0.004(RHmin − 45)](h∕3)^0.3.</remarks>
    public static double Full(double heightM, double windAt2M, double rhMinPct)
    {
        Require.Above(heightM, 0, "m");
        return Math.Min(1.2, 1 + (0.1 * heightM)) + CropCoefficient.ClimateCorrection(windAt2M, rhMinPct, heightM);
    }

    /// <summary>Mid-season basal coefficient of a crop that covers a part of the ground. [–]</summary>
    /// <param name="fullCoefficient">Coefficient if it covered all ground, see <see cref="Full"/>. [–]</param>
    /// <param name="cover">Share covered as seen from above, 0–1. [–]</param>
    /// <param name="effectiveCover">Share shaded at solar noon, from <paramref name="cover"/> to 1. [–]</param>
    /// <param name="heightM">Height of the crop, above 0. [m]</param>
    /// <param name="bareGround">Coefficient of bare ground, 0 to the full one. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56 Eq. 98: Kcmin + (Kcb full − Kcmin)·min(1, 2fc, fc_eff^(1∕(1 + h))).</remarks>
    public static double Fao56(double fullCoefficient, double cover, double effectiveCover, double heightM, double bareGround = BareGround) =>
        Between(bareGround, fullCoefficient, DensityFactor(2, cover, effectiveCover, heightM));

    /// <summary>Basal coefficient after Allen and Pereira. [–]</summary>
    /// <param name="fullCoefficient">Coefficient if it covered all ground, already reduced by <see cref="StomatalFactor"/> where that applies. [–]</param>
    /// <param name="effectiveCover">Share shaded at solar noon, 0–1. [–]</param>
    /// <param name="heightM">Height of the crop, above 0. [m]</param>
    /// <param name="multiplier">How dense each bit of canopy is, 1–2. From memory 1.5 to 2.0, commonly 1.5 for vines: to be checked. [–]</param>
    /// <param name="bareGround">Coefficient of bare ground, 0 to the full one. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Allen &amp; Pereira (2009), Irrig. Sci. 28:17–34: Kd = min(1, ML·fc_eff, fc_eff^(1∕(1 + h))); Kcb = Kcmin + Kd(Kcb full − Kcmin).</remarks>
    public static double AllenPereira2009(double fullCoefficient, double effectiveCover, double heightM, double multiplier = 1.5, double bareGround = BareGround)
    {
        Require.InRange(multiplier, 1, 2, "(multiplier)");
        return Between(bareGround, fullCoefficient, DensityFactor(multiplier, effectiveCover, effectiveCover, heightM));
    }

    /// <summary>Reduction for a crop that holds its stomata more closed than grass, above 0 to 1. [–]</summary>
    /// <param name="slopeKpaPerC">Slope of the saturation vapour pressure curve, above 0. [kPa/°C]</param>
    /// <param name="psychrometricKpaPerC">Psychrometric constant, above 0. [kPa/°C]</param>
    /// <param name="windAt2M">0 or more. [m/s]</param>
    /// <param name="leafResistanceSPerM">Mean resistance of a well-lit leaf, at least the 100 of grass. [s/m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>FAO-56 Eq. 102: (Δ + γ(1 + 0.34u₂)) ∕ (Δ + γ(1 + 0.34u₂·rl∕100)).</remarks>
    public static double StomatalFactor(double slopeKpaPerC, double psychrometricKpaPerC, double windAt2M, double leafResistanceSPerM)
    {
        Require.Above(slopeKpaPerC, 0, "kPa/°C");
        Require.Above(psychrometricKpaPerC, 0, "kPa/°C");
        Require.AtLeast(windAt2M, 0, "m/s");
        Require.AtLeast(leafResistanceSPerM, 100, "s/m");
        double Denominator(double resistance) => slopeKpaPerC + (psychrometricKpaPerC * (1 + (0.34 * windAt2M * resistance / 100)));
        return Denominator(100) / Denominator(leafResistanceSPerM);
    }

    private static double DensityFactor(double multiplier, double cover, double effectiveCover, double heightM)
    {
        Require.InRange(cover, 0, 1, "(share of the ground)");
        Require.InRange(effectiveCover, cover, 1, "(share of the ground, not below the cover from above)");
        Require.Above(heightM, 0, "m");
        return Math.Min(Math.Min(1, multiplier * cover), Math.Pow(effectiveCover, 1 / (1 + heightM)));
    }

    private static double Between(double bareGround, double fullCoefficient, double density)
    {
        Require.InRange(fullCoefficient, 0, 2, "(crop coefficient)");
        Require.InRange(bareGround, 0, fullCoefficient, "(crop coefficient, not above the full one)");
        return bareGround + (density * (fullCoefficient - bareGround));
    }
}
