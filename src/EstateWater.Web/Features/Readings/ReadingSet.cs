using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Readings;

/// <summary>Leaves of one block read on one day for one measure.</summary>
/// <param name="BlockCode">The block.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="Date">The estate's day.</param>
/// <param name="Leaves">In the order in which they were read.</param>
public sealed record ReadingSet(string BlockCode, WaterPotentialMeasure Measure, DateOnly Date, IReadOnlyList<ChamberReading> Leaves)
{
    /// <summary>The leaves as facts for statistics and checks.</summary>
    public IReadOnlyList<LeafFact> Facts => field ??=
    [
        .. Leaves.Select(leaf => new LeafFact(
            leaf.TakenAt, leaf.Measure, leaf.TensionBar / Conversions.BarPerMegapascal, leaf.Exposure, leaf.BaggedMin, leaf.DelayS, leaf.Group, leaf.Vine)),
    ];

    /// <summary>Mean and how sure it is.</summary>
    public ReadingSetStatistics Statistics => field ??= ReadingSetStatistics.Of(Facts);

    /// <summary>Mean tension. [bar]</summary>
    public double MeanBar => Statistics.MeanMpa * Conversions.BarPerMegapascal;

    /// <summary>Mean tension without leaves flagged as outliers. [bar]</summary>
    public double RobustMeanBar => Statistics.RobustMeanMpa * Conversions.BarPerMegapascal;

    /// <summary>Standard error of the mean; null for a single vine. [bar]</summary>
    public double? StandardErrorBar => Statistics.StandardErrorMpa * Conversions.BarPerMegapascal;

    /// <summary>Half the width of the 95 % interval of the mean; null for a single vine. [bar]</summary>
    public double? HalfWidthBar => Statistics.HalfWidthMpa() * Conversions.BarPerMegapascal;

    /// <summary>Address of the page that lists its leaves.</summary>
    public string Href => $"/blocks/{Uri.EscapeDataString(BlockCode)}/sets/{Date:yyyy-MM-dd}";
}
