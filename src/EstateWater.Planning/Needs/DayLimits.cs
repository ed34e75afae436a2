using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Needs;

/// <summary>The tension wanted of a block, day by day ahead.</summary>
internal sealed class DayLimits
{
    private DayLimits(WaterPotentialMeasure measure, double[] floorMpa, double[] ceilingMpa, bool[] floorCounts, bool[] hasLeaves, bool[] isPicked)
    {
        IsPicked = isPicked;
        HasLeaves = hasLeaves;
        Measure = measure;
        FloorMpa = floorMpa;
        CeilingMpa = ceilingMpa;
        FloorCounts = floorCounts;
    }

    /// <summary>The measure of today's target; other days are given in it as far as their targets use it.</summary>
    public WaterPotentialMeasure Measure { get; }

    public double[] FloorMpa { get; }

    public double[] CeilingMpa { get; }

    public bool[] FloorCounts { get; }

    public bool[] HasLeaves { get; }

    /// <summary>Whether the fruit is off.</summary>
    public bool[] IsPicked { get; }

    public static DayLimits Of(PlanBlock block, GrowthStageProjection stages, DateOnly today, int days)
    {
        var now = TargetAt(block, stages.At(today), null);
        var floors = new double[days];
        var ceilings = new double[days];
        var counts = new bool[days];
        var leaves = new bool[days];
        var picked = new bool[days];
        for (var day = 0; day < days; day++)
        {
            var stage = stages.At(today.AddDays(day));
            var target = TargetAt(block, stage, now.Measure);
            floors[day] = target.FloorBar / Conversions.BarPerMegapascal;
            ceilings[day] = target.CeilingBar / Conversions.BarPerMegapascal;

            // Without leaves nothing can be too dry at midday; from fruit set on, too wet is a fault as well: big berries, rank canopy.
            leaves[day] = stage is >= GrowthStageCurve.BudburstElStage and < GrowthStageCurve.LeafFallElStage;
            picked[day] = stage >= GrowthStageCurve.RipeElStage;
            counts[day] = stage >= GrowthStageCurve.FruitSetElStage && leaves[day];
        }

        return new DayLimits(now.Measure, floors, ceilings, counts, leaves, picked);
    }

    /// <summary>The target that holds at a stage: the estate's own, else the default of the stage. A stage on the border belongs to the later target.</summary>
    private static StageTarget TargetAt(PlanBlock block, double stage, WaterPotentialMeasure? measure)
    {
        var own = block.Targets
            .Where(t => measure is null || t.Measure == measure)
            .OrderBy(t => t.FromElStage)
            .LastOrDefault(t => t.FromElStage <= stage && stage <= t.ToElStage);
        if (own is not null)
        {
            return own;
        }

        var usual = measure ?? Usual(block);
        var target = DefaultTargets.For(block.IsWhite, stage, usual);
        return new StageTarget(stage, stage, usual, target.FloorBar, target.CeilingBar);
    }

    // Without a target, the measure that the block was last read in; a leaf where it never was.
    private static WaterPotentialMeasure Usual(PlanBlock block) => block.Readings.Count > 0 ? block.Readings[^1].Measure : WaterPotentialMeasure.Leaf;
}
