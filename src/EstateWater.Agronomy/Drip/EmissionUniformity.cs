using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Statistics;

namespace EstateWater.Agronomy.Drip;

/// <summary>How evenly emitters give, from flows or volumes caught at some of them.</summary>
[Method(
    "Emission uniformity",
    Source = "Low-quarter distribution uniformity and Christiansen's coefficient (Christiansen 1942); design uniformity of Keller & Karmeli (1974) and classes of ASAE EP458, both from memory, to be checked",
    Check = "Sixteen catch cans of a published evaluation: low-quarter uniformity 82.13 %")]
public static class EmissionUniformity
{
    /// <summary>Low-quarter distribution uniformity, the field's emission uniformity, 0–1. [–]</summary>
    /// <param name="flows">At least four, 0 or more, not all 0; any unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, or outside their range.</exception>
    /// <remarks>Mean of the lowest quarter over the mean. Where the count does not divide by four the last one of the quarter counts by its share.</remarks>
    public static double LowQuarter(IReadOnlyList<double> flows)
    {
        var mean = MeanOf(flows);
        double sum = 0, left = flows.Count / 4.0;
        foreach (var flow in flows.Order())
        {
            var share = Math.Min(1, left);
            sum += share * flow;
            left -= share;
        }

        return sum / (flows.Count / 4.0) / mean;
    }

    /// <summary>Christiansen's uniformity coefficient; below 0 only where flows differ wildly. [–]</summary>
    /// <param name="flows">At least four, 0 or more, not all 0; any unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, or outside their range.</exception>
    /// <remarks>1 − Σ|xᵢ − m|∕(n·m).</remarks>
    public static double Christiansen(IReadOnlyList<double> flows)
    {
        var mean = MeanOf(flows);
        return 1 - (flows.Sum(x => Math.Abs(x - mean)) / (flows.Count * mean));
    }

    /// <summary>Statistical uniformity, one less the coefficient of variation. [–]</summary>
    /// <param name="flows">At least four, 0 or more, not all 0; any unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, or outside their range.</exception>
    public static double Statistical(IReadOnlyList<double> flows) => 1 - (Descriptive.StandardDeviation(flows) / MeanOf(flows));

    /// <summary>Uniformity of a design, 0–1. [–]</summary>
    /// <param name="manufacturingVariation">Coefficient of variation of new emitters, 0–0.5. [–]</param>
    /// <param name="emittersPerVine">At least 1.</param>
    /// <param name="lowestFlow">At the lowest pressure, above 0 to the mean. [L/h]</param>
    /// <param name="meanFlow">Above 0. [L/h]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Keller &amp; Karmeli (1974): (1 − 1.27·Cv∕√n)·qmin∕qavg. From memory, to be checked.</remarks>
    public static double Design(double manufacturingVariation, double emittersPerVine, double lowestFlow, double meanFlow)
    {
        Require.InRange(manufacturingVariation, 0, 0.5, "(coefficient of variation)");
        Require.AtLeast(emittersPerVine, 1, "emitters");
        Require.Above(meanFlow, 0, "L/h");
        Require.Above(Require.InRange(lowestFlow, 0, meanFlow, "L/h (not above the mean)"), 0, "L/h");
        return (1 - (1.27 * manufacturingVariation / Math.Sqrt(emittersPerVine))) * lowestFlow / meanFlow;
    }

    /// <summary>A uniformity in words. ASAE EP458, from memory, to be checked.</summary>
    /// <param name="uniformity">0–1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public static string Words(double uniformity) => Require.InRange(uniformity, 0, 1, "(share)") switch
    {
        >= 0.9 => "excellent",
        >= 0.8 => "good",
        >= 0.7 => "fair",
        >= 0.6 => "poor",
        _ => "unacceptable",
    };

    private static double MeanOf(IReadOnlyList<double> flows)
    {
        foreach (var flow in Require.Values(flows, 4))
        {
            Require.AtLeast(flow, 0, "(flow)", nameof(flows));
        }

        return Require.Above(Descriptive.Mean(flows), 0, "(mean flow)", nameof(flows));
    }
}
