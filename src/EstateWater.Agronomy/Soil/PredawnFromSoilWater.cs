using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>Tension before dawn from the fraction of transpirable soil water that is left, and back.</summary>
/// <remarks>Wet soil is told badly: above a fraction of about 0.36 vines differ from their soil before dawn.</remarks>
[Method(
    "Predawn water potential and the fraction of transpirable soil water",
    Source = "Pellegrino et al. (2004), used by Gaudin & Gary (2012), Irrig. Sci. 30:449–459: FTSW = 1.0572·exp(5.3452·Ψpd). Constants from memory, to be checked",
    Check = "There and back; the constants are editable defaults")]
public static class PredawnFromSoilWater
{
    /// <summary>Fraction at no tension. From memory, to be checked. [–]</summary>
    public const double FractionAtNoTension = 1.0572;

    /// <summary>Fall of the fraction's logarithm with tension. From memory, to be checked. [1/MPa]</summary>
    public const double LogFallPerMpa = 5.3452;

    /// <summary>Tension before dawn. [MPa, positive]</summary>
    /// <param name="fractionLeft">Above 0 (0.001) to 1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public static double TensionMpa(double fractionLeft) =>
        -Math.Log(Require.InRange(fractionLeft, 0.001, 1, "(share)") / FractionAtNoTension) / LogFallPerMpa;

    /// <summary>Fraction of the transpirable soil water left, at most 1. [–]</summary>
    /// <param name="predawnTensionMpa">0–2. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public static double FractionLeft(double predawnTensionMpa) =>
        Math.Min(1, FractionAtNoTension * Math.Exp(-LogFallPerMpa * Require.InRange(predawnTensionMpa, 0, 2, "MPa of predawn tension")));
}
