using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;

namespace EstateWater.Simulation.Observation;

/// <summary>What someone walking a block writes down of shoots, shade and growth stage.</summary>
public sealed class CanopyRound(SimulatedEstate estate)
{
    private static readonly int[] NotedStages = [4, 9, 12, 15, 19, 23, 25, 27, 29, 31, 33, 34, 35, 36, 37, 38, 41, 43, 47];

    /// <summary>A visit, of the canopy as it stands.</summary>
    public CanopyRow Visit(BlockSpec block, DateOnly day)
    {
        var dice = Dice.Of(estate.Seed, "canopy", block.Code, day);
        var canopy = estate.Block(block.Code).Canopy;
        var tension = estate.TrueTensionBar(block.Code, day, Measure.Leaf) + dice.Normal(0, 0.7);
        return new CanopyRow(
            block.Code,
            day,
            (int)Math.Max(1, canopy.ShootCm + dice.Normal(0, 3)),
            Math.Clamp(canopy.Shade + dice.Normal(0, 0.02), 0.01, 0.95),
            (int)Math.Clamp((100 * canopy.GrowingTips) + dice.Normal(0, 4), 0, 100),
            tension switch { < 10.5 => 0, < 13.5 => 1, < 16.5 => 2, _ => 3 });
    }

    /// <summary>The latest stage worth noting, or null before budburst.</summary>
    public int? Stage(BlockSpec block)
    {
        var stage = estate.Block(block.Code).Canopy.Stage;
        return NotedStages.Where(s => s <= stage).Cast<int?>().LastOrDefault();
    }
}
