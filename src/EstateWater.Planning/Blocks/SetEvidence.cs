using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Blocks;

/// <summary>How much a reading set says.</summary>
internal static class SetEvidence
{
    // Leaves of a usual set stand in for five of its own when it is small. Ours.
    private const int UsualLeaves = 5;

    // How much a set may be off as a whole when a check doubts it, and when a check says to read it again. [MPa]; ours.
    private const double DoubtMpa = 0.03;
    private const double ReadAgainMpa = 0.3;

    /// <summary>Usual standard deviation between leaves. [MPa]; common practice: leaves spread more than stems.</summary>
    public static double UsualSpreadMpa(WaterPotentialMeasure measure) => measure == WaterPotentialMeasure.Leaf ? 0.10 : 0.06;

    public static TensionEvidence Of(ReadingSet set)
    {
        var kept = set.Statistics.Robust.Leaves;
        var usual = UsualSpreadMpa(set.Measure);
        var own = set.Statistics.Robust.StandardDeviationMpa ?? usual;
        var variance = ((Math.Max(0, kept - 1) * own * own) + (UsualLeaves * usual * usual)) / (Math.Max(0, kept - 1) + UsualLeaves) / kept;
        if (set.Findings.Any(f => f.Severity == FindingSeverity.Reject))
        {
            variance += ReadAgainMpa * ReadAgainMpa;
        }
        else if (set.IsDoubtful)
        {
            variance += DoubtMpa * DoubtMpa;
        }

        return new TensionEvidence(set.Date, set.Measure, set.Statistics.RobustMeanMpa, Math.Sqrt(variance));
    }
}
