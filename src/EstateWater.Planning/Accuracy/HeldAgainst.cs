using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Accuracy;

/// <summary>What the outlook had said of one reading set some days before, and what was read.</summary>
/// <param name="Block">The block's code.</param>
/// <param name="Date">The day of the set.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="LeadDays">How many days before. [d]</param>
/// <param name="ReadBar">Mean of the set. [bar]</param>
/// <param name="StandardErrorBar">Of that mean. [bar]</param>
/// <param name="Expected">What had been said, with the water that was then really applied.</param>
/// <param name="NoChangeBar">The last set known then. [bar]</param>
/// <param name="StraightLineBar">The straight line through the last three of the season known then; null with fewer. [bar]</param>
public sealed record HeldAgainst(
    string Block, DateOnly Date, WaterPotentialMeasure Measure, int LeadDays, double ReadBar, double StandardErrorBar, TensionBand Expected, double NoChangeBar, double? StraightLineBar)
{
    // Ninetieth percentile of the standard normal distribution.
    private const double Z90 = 1.2816;

    /// <summary>Expected less read: below zero, the block came out drier than expected. [bar]</summary>
    public double MissBar => Expected.P50 - ReadBar;

    /// <summary>Whether the reading lay inside the 80 % band, the band widened by the leaves' own error, since a reading is no truth.</summary>
    public bool IsInside
    {
        get
        {
            var leaves = Z90 * StandardErrorBar;
            var up = Expected.P90 - Expected.P50;
            var down = Expected.P50 - Expected.P10;
            return ReadBar <= Expected.P50 + Math.Sqrt((up * up) + (leaves * leaves))
                && ReadBar >= Expected.P50 - Math.Sqrt((down * down) + (leaves * leaves));
        }
    }
}
