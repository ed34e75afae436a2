namespace EstateWater.Planning.Accuracy;

/// <summary>How good past outlooks were.</summary>
/// <param name="Sets">Reading sets held against.</param>
/// <param name="ErrorBar">Mean absolute error of the middle. [bar]</param>
/// <param name="BiasBar">Mean of expected less read. [bar]</param>
/// <param name="InsideBandShare">Share of readings inside the 80 % band, see <see cref="HeldAgainst.IsInside"/>. 0–1.</param>
/// <param name="NoChangeErrorBar">Mean absolute error of "no change since the last reading". [bar]</param>
/// <param name="StraightLineErrorBar">Mean absolute error of the straight line through the last three, over the sets that had three before them; null when none had. [bar]</param>
public sealed record AccuracyScore(int Sets, double ErrorBar, double BiasBar, double InsideBandShare, double NoChangeErrorBar, double? StraightLineErrorBar)
{
    /// <summary>The score of some outlooks; null when there are none.</summary>
    public static AccuracyScore? Of(IReadOnlyList<HeldAgainst> held)
    {
        ArgumentNullException.ThrowIfNull(held);
        return held.Count == 0
            ? null
            : new AccuracyScore(
                held.Count,
                held.Average(h => Math.Abs(h.MissBar)),
                held.Average(h => h.MissBar),
                held.Average(h => h.IsInside ? 1.0 : 0),
                held.Average(h => Math.Abs(h.NoChangeBar - h.ReadBar)),
                held.Average(h => h.StraightLineBar is { } line ? Math.Abs(line - h.ReadBar) : (double?)null));
    }
}
