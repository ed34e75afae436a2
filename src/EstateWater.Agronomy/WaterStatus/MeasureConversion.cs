using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Estimates one measure from another. Prefer never to: classify each measure on its own scale.</summary>
/// <remarks>
/// <para>Piecewise straight lines through the class limits of van Leeuwen et al. (2009), taken as paired points. Wetter than the first point leaf stays
/// 0.3 MPa above stem; drier than the last one the last difference stays. The gap shrinks as stress grows.</para>
/// </remarks>
[Method(
    "Leaf, stem and predawn estimated from each other",
    Source = "Class limits of van Leeuwen et al. (2009), J. Int. Sci. Vigne Vin 43:121–134, Table 1, taken as paired points (from memory, to be checked); the lines and the stated errors are ours",
    Check = "The class limits themselves, there and back")]
public static class MeasureConversion
{
    /// <summary>Likely error of leaf from stem or stem from leaf. Ours. [MPa]</summary>
    public const double LeafStemErrorMpa = 0.15;

    /// <summary>Likely error of midday from predawn or predawn from midday. Ours. [MPa]</summary>
    public const double PredawnErrorMpa = 0.2;

    private static readonly double[] Leaf = [0.3, 0.9, 1.1, 1.3, 1.4];
    private static readonly double[] StemOfLeaf = [0, 0.6, 0.9, 1.1, 1.4];
    private static readonly double[] Predawn = [0, 0.2, 0.3, 0.5, 0.8];

    // At no predawn tension: the least-squares line through the four points cuts the axis there, close to the baseline at 3 kPa.
    private static readonly double[] StemOfPredawn = [0.443, 0.6, 0.9, 1.1, 1.4];

    /// <summary>Estimates a tension on another measure.</summary>
    /// <param name="from">Measure of the tension.</param>
    /// <param name="to">Measure wanted.</param>
    /// <param name="tensionMpa">0–10. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range, or not a measure.</exception>
    public static ConvertedTension Convert(WaterPotentialMeasure from, WaterPotentialMeasure to, double tensionMpa)
    {
        Require.InRange(tensionMpa, 0, 10, "MPa of tension");
        if (from == to)
        {
            return new ConvertedTension(tensionMpa, 0);
        }

        var stem = from switch
        {
            WaterPotentialMeasure.Leaf => Along(Leaf, StemOfLeaf, tensionMpa),
            WaterPotentialMeasure.Stem => tensionMpa,
            WaterPotentialMeasure.Predawn => Along(Predawn, StemOfPredawn, tensionMpa),
            _ => throw new ArgumentOutOfRangeException(nameof(from), from, "Expected Leaf, Stem or Predawn."),
        };
        var converted = to switch
        {
            WaterPotentialMeasure.Leaf => Along(StemOfLeaf, Leaf, stem),
            WaterPotentialMeasure.Stem => stem,
            WaterPotentialMeasure.Predawn => Along(StemOfPredawn, Predawn, stem),
            _ => throw new ArgumentOutOfRangeException(nameof(to), to, "Expected Leaf, Stem or Predawn."),
        };
        var throughPredawn = from == WaterPotentialMeasure.Predawn || to == WaterPotentialMeasure.Predawn;
        return new ConvertedTension(converted, throughPredawn ? PredawnErrorMpa : LeafStemErrorMpa);
    }

    private static double Along(double[] x, double[] y, double at)
    {
        if (at <= x[0])
        {
            return y[0];
        }

        if (at >= x[^1])
        {
            return y[^1] + (at - x[^1]);
        }

        var i = Array.FindIndex(x, limit => at <= limit);
        return y[i - 1] + ((at - x[i - 1]) / (x[i] - x[i - 1]) * (y[i] - y[i - 1]));
    }
}

/// <summary>A tension estimated from another measure.</summary>
/// <param name="TensionMpa">[MPa, positive]</param>
/// <param name="ErrorMpa">Likely error either way; 0 when nothing had to be estimated. [MPa]</param>
public readonly record struct ConvertedTension(double TensionMpa, double ErrorMpa);
