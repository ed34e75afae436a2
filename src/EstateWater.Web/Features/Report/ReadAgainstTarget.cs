using EstateWater.Planning;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Report;

/// <summary>A reading set beside the tension that was wanted at its stage.</summary>
/// <param name="Set">The set.</param>
/// <param name="Wanted">What was wanted that day; null where no target held.</param>
public sealed record ReadAgainstTarget(ReadingSet Set, TargetBand? Wanted)
{
    /// <summary>“1.2 over”, “within”, “0.4 under”, in bar; counted from what is written.</summary>
    public string Words(UnitChoice units) => Wanted switch
    {
        null => "no target then",
        { } band when Tenths(Set.MeanBar) > Tenths(band.CeilingBar) => $"{units.BareTension(Tenths(Set.MeanBar) - Tenths(band.CeilingBar))} over",
        { } band when Tenths(Set.MeanBar) < Tenths(band.FloorBar) => $"{units.BareTension(Tenths(band.FloorBar) - Tenths(Set.MeanBar))} under",
        _ => "within",
    };

    private static double Tenths(double bar) => Math.Round(bar, 1);
}
