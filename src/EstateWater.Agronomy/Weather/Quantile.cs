using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>How a percentile between two ranks is read off.</summary>
public enum QuantileType
{
    /// <summary>Hyndman–Fan type 7: as spreadsheets do.</summary>
    Spreadsheet7 = 7,

    /// <summary>Hyndman–Fan type 8: median-unbiased, as climate packages do.</summary>
    MedianUnbiased8 = 8,
}

/// <summary>Percentiles of a sample.</summary>
[Method("Sample quantiles", Source = "Hyndman & Fan (1996), Am. Stat. 50: 361–365, types 7 and 8", Check = "1 to 10, 90th percentile: 9.1 and 9.6333 (numpy and R)")]
public static class Quantile
{
    /// <summary>The value below which a share of the sample lies, in the sample's own unit.</summary>
    /// <param name="values">At least one, any order.</param>
    /// <param name="percent">0 to 100. [%]</param>
    /// <param name="type">How to read between ranks.</param>
    /// <exception cref="ArgumentOutOfRangeException">No value, one that is not finite, or a percentage outside its range.</exception>
    public static double Of(IReadOnlyList<double> values, double percent, QuantileType type = QuantileType.Spreadsheet7)
    {
        Require.Values(values, atLeast: 1);
        var p = Require.InRange(percent, 0, 100, "%") / 100;
        double[] sorted = [.. values];
        Array.Sort(sorted);
        var rank = type == QuantileType.MedianUnbiased8
            ? (p * (sorted.Length + (1 / 3.0))) + (1 / 3.0)
            : (p * (sorted.Length - 1)) + 1;
        rank = Math.Clamp(rank, 1, sorted.Length);
        var below = (int)Math.Floor(rank);
        var above = Math.Min(below + 1, sorted.Length);
        return sorted[below - 1] + ((rank - below) * (sorted[above - 1] - sorted[below - 1]));
    }
}
