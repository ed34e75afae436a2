using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;

namespace EstateWater.Simulation.Observation;

/// <summary>
/// Reads leaves as a crew does: each observer is a little high or low, each set has its own bias, groups and vines of a
/// block differ for good, single leaves scatter, and now and then one is plainly wrong.
/// </summary>
public sealed class ChamberRound(SimulatedEstate estate)
{
    public const int Groups = 2;
    public const int VinesPerGroup = 3;
    private const double MinutesPerLeaf = 1.0;
    private const double MinutesPerBlock = 9;
    private static readonly (string Name, double BiasBar)[] Observers = [("IM", 0.15), ("TK", -0.25), ("RS", 0.0)];

    /// <summary>One block's set on a day, the <paramref name="place"/>-th of the round.</summary>
    public IEnumerable<ReadingRow> Read(BlockSpec block, DateOnly day, int place, ReadingCondition condition)
    {
        var dice = Dice.Of(estate.Seed, "set", block.Code, day);
        var observer = Observers[place % Observers.Length];
        var truth = estate.TrueDay(block.Code, day);
        var scale = block.Measure == Measure.Leaf ? 1 : 0.5;
        var setBias = scale * (observer.BiasBar + dice.Normal(0, 0.3));
        var start = Start(block, day, place / Observers.Length, condition);
        for (var leaf = 0; leaf < Groups * VinesPerGroup; leaf++)
        {
            var (group, vine) = ((leaf / VinesPerGroup) + 1, leaf + 1);
            var shaded = block.Measure == Measure.Leaf && dice.Chance(condition.ShadedShare);
            var tension = truth.TensionBar(shaded ? Measure.Stem : block.Measure) + setBias
                + (scale * Standing(block, group, vine)) + (scale * condition.Spread * dice.Normal(0, 0.75)) + Slip(dice);
            yield return new ReadingRow(
                block.Code,
                start.AddMinutes(leaf * MinutesPerLeaf),
                block.Measure,
                FormattableString.Invariant($"G{group}"),
                FormattableString.Invariant($"{vine}"),
                Math.Max(block.Measure == Measure.Leaf ? 2 : 0.8, tension),
                shaded ? "shade" : "sun",
                block.Measure == Measure.Stem ? dice.Whole(60, 95) : 0,
                dice.Whole(condition.LongestDelayS > 60 ? 62 : 12, condition.LongestDelayS),
                observer.Name,
                leaf == 0 ? condition.Note : null);
        }
    }

    /// <summary>Groups lie to either side of the block's mean for good, vines by chance.</summary>
    private double Standing(BlockSpec block, int group, int vine)
    {
        var offset = Dice.Of(estate.Seed, "group", block.Code).Normal(0, 0.45);
        return (group == 1 ? offset : -offset) + Dice.Of(estate.Seed, "vine", block.Code, vine).Normal(0, 0.35);
    }

    private static double Slip(Dice dice) => dice.Chance(0.012) ? dice.Normal(0, 3) : 0;

    /// <summary>Midday rounds straddle solar noon; dawn rounds end before sunrise.</summary>
    private DateTimeOffset Start(BlockSpec block, DateOnly day, int turn, ReadingCondition condition)
    {
        var noon = estate.Spec.Site.SolarNoonHour(day);
        if (block.Measure == Measure.Predawn)
        {
            return estate.Spec.Site.At(day, noon - 8.2 + (turn % 4 * MinutesPerBlock / 60));
        }

        return estate.Spec.Site.At(day, noon + (condition.HoursAfterNoon ?? ((turn * MinutesPerBlock) - 54) / 60));
    }
}
