using System.Globalization;

namespace EstateWater.Web.Parts.Drawing;

/// <summary>Places values along one side of a drawing, with round numbers to write beside it.</summary>
/// <param name="Low">Value at the start.</param>
/// <param name="High">Value at the end, above the low one.</param>
/// <param name="Step">Between two written numbers.</param>
/// <param name="Start">Where the low value lies. [drawing units]</param>
/// <param name="End">Where the high value lies; before the start for an axis that rises on the page. [drawing units]</param>
public sealed record LinearScale(double Low, double High, double Step, double Start, double End)
{
    /// <summary>A scale of whole round steps that holds all values.</summary>
    /// <param name="values">Any count; none gives 0 to 1.</param>
    /// <param name="start">Where the low value lies. [drawing units]</param>
    /// <param name="end">Where the high value lies. [drawing units]</param>
    /// <param name="mostSteps">At most about so many numbers fit.</param>
    public static LinearScale Holding(IEnumerable<double> values, double start, double end, int mostSteps = 5)
    {
        var all = values.DefaultIfEmpty(0).ToList();
        var (low, high) = (all.Min(), all.Max());
        var step = RoundStep(Math.Max(high - low, 1e-6 * Math.Max(1, Math.Abs(high))) / mostSteps);
        var first = Math.Floor((low / step) + 1e-9) * step;
        var last = Math.Ceiling((high / step) - 1e-9) * step;
        return new LinearScale(first, last > first ? last : first + step, step, start, end);
    }

    /// <summary>The round numbers from low to high.</summary>
    public IEnumerable<double> Ticks => Enumerable.Range(0, (int)Math.Round((High - Low) / Step) + 1).Select(i => Low + (i * Step));

    /// <summary>Where a value lies. [drawing units]</summary>
    public double At(double value) => Start + ((value - Low) / (High - Low) * (End - Start));

    /// <summary>The same as text of an attribute.</summary>
    public string Place(double value) => Text(At(value));

    /// <summary>A number with as many decimals as the steps need.</summary>
    /// <param name="value">The number.</param>
    /// <param name="marks">How its reader writes numbers.</param>
    public string Words(double value, NumberFormatInfo marks) => value.ToString("F" + Math.Max(0, (int)Math.Ceiling(-Math.Log10(Step) - 1e-9)), marks);

    /// <summary>A place or length as text of an attribute.</summary>
    public static string Text(double units) => units.ToString("0.#", CultureInfo.InvariantCulture);

    private static double RoundStep(double least)
    {
        var tens = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return tens * (least / tens) switch
        {
            <= 1.000001 => 1,
            <= 2.000001 => 2,
            <= 5.000001 => 5,
            _ => 10,
        };
    }
}
