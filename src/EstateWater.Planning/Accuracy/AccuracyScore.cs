namespace EstateWater.Planning.Accuracy;

/// <summary>How good past outlooks were.</summary>
/// <param name="Sets">Reading sets held against.</param>
/// <param name="ErrorBar">Mean absolute error of the middle. [bar]</param>
/// <param name="BiasBar">Mean of expected less read. [bar]</param>
/// <param name="InsideBandShare">Share of readings inside the 80 % band, the band widened by the leaves' own error, since a reading is no truth. 0–1.</param>
/// <param name="NoChangeErrorBar">Mean absolute error of "no change since the last reading". [bar]</param>
/// <param name="StraightLineErrorBar">Mean absolute error of the straight line through the last three; NaN when never known. [bar]</param>
public sealed record AccuracyScore(int Sets, double ErrorBar, double BiasBar, double InsideBandShare, double NoChangeErrorBar, double StraightLineErrorBar)
{
    // Ninetieth percentile of the standard normal distribution.
    private const double Z90 = 1.2816;

    /// <summary>The score of some outlooks; null when there are none.</summary>
    public static AccuracyScore? Of(IReadOnlyList<HeldAgainst> held)
    {
        ArgumentNullException.ThrowIfNull(held);
        return held.Count == 0
            ? null
            : new AccuracyScore(
                held.Count,
                held.Average(h => Math.Abs(h.Expected.P50 - h.ReadBar)),
                held.Average(h => h.Expected.P50 - h.ReadBar),
                held.Average(h => IsInside(h) ? 1.0 : 0),
                held.Average(h => Math.Abs(h.NoChangeBar - h.ReadBar)),
                held.Where(h => h.StraightLineBar is not null).Select(h => Math.Abs(h.StraightLineBar!.Value - h.ReadBar)).DefaultIfEmpty(double.NaN).Average());
    }

    private static bool IsInside(HeldAgainst held)
    {
        var leaves = Z90 * held.StandardErrorBar;
        var up = held.Expected.P90 - held.Expected.P50;
        var down = held.Expected.P50 - held.Expected.P10;
        return held.ReadBar <= held.Expected.P50 + Math.Sqrt((up * up) + (leaves * leaves))
            && held.ReadBar >= held.Expected.P50 - Math.Sqrt((down * down) + (leaves * leaves));
    }
}
