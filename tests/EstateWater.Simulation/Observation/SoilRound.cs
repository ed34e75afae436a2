using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;

namespace EstateWater.Simulation.Observation;

/// <summary>Counts in the tubes, a hand's breadth from a dripper: Poisson noise, a standard count each session.</summary>
public sealed class SoilRound(SimulatedEstate estate)
{
    public const double Intercept = -0.021;
    public const double Slope = 0.56;
    private static readonly int[] DepthsCm = [20, 40, 60, 80, 100];

    public IEnumerable<SoilRow> Count(BlockSpec block, DateOnly day)
    {
        var standard = (int)Dice.Of(estate.Seed, "standard", day).Normal(11800, 90);
        var dice = Dice.Of(estate.Seed, "tube", block.Code, day);
        foreach (var depth in DepthsCm.Where(d => d <= block.Truth.RootDepthM * 100))
        {
            var site = Dice.Of(estate.Seed, "tubesite", block.Code, depth).Normal(0, 0.012);
            var layer = estate.Block(block.Code).Soil.Bulb.Layers.Last(l => l.TopMm <= depth * 10);
            var expected = Math.Max(200, (layer.BulkTheta + site - Intercept) / Slope * standard);
            yield return new SoilRow(block.Code, day, "T1", depth, (int)dice.Normal(expected, Math.Sqrt(expected)), standard);
        }
    }
}
