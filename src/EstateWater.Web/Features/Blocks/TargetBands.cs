using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Blocks;

/// <summary>The tension wanted over some days.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="FloorBar">Wettest tension wanted. [bar]</param>
/// <param name="CeilingBar">Driest tension wanted. [bar]</param>
public sealed record TargetBand(DateOnly From, DateOnly To, double FloorBar, double CeilingBar);

/// <summary>Lays the targets, which go by growth stage, on the calendar of one block.</summary>
public static class TargetBands
{
    /// <summary>Bands from the first day to the last; days outside every target have none.</summary>
    /// <param name="block">The block.</param>
    /// <param name="measure">Which water potential.</param>
    /// <param name="stages">Stages observed in the block this season, in date order.</param>
    /// <param name="targets">The estate's targets: one for the block goes before one for its fruit, and that before one for all.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    public static IReadOnlyList<TargetBand> For(
        Block block, WaterPotentialMeasure measure, IReadOnlyList<StageObservation> stages, IReadOnlyList<Target> targets, DateOnly from, DateOnly to)
    {
        var mine = targets
            .Where(target => target.Measure == measure && Holds(target, block))
            .OrderByDescending(target => target.BlockCode is not null).ThenByDescending(target => target.Fruit is not null)
            .ToList();
        var bands = new List<TargetBand>();
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            if (StageOn(day, stages) is { } stage && mine.Find(target => stage >= target.FromElStage && stage < target.ToElStage) is { } target)
            {
                Extend(bands, day, target);
            }
        }

        return bands;
    }

    /// <summary>The growth stage of a day, straight between two observations; after the last one, the last. Null before the first.</summary>
    internal static double? StageOn(DateOnly day, IReadOnlyList<StageObservation> stages)
    {
        if (stages.Count == 0 || day < stages[0].Date)
        {
            return null;
        }

        var next = stages.FirstOrDefault(stage => stage.Date > day);
        var last = stages.Last(stage => stage.Date <= day);
        return next is null
            ? last.ElStage
            : last.ElStage + (next.ElStage - last.ElStage) * (day.DayNumber - last.Date.DayNumber) / (next.Date.DayNumber - last.Date.DayNumber);
    }

    private static bool Holds(Target target, Block block) =>
        (target.BlockCode ?? block.Code) == block.Code && (target.Fruit ?? block.Fruit) == block.Fruit;

    private static void Extend(List<TargetBand> bands, DateOnly day, Target target)
    {
        if (bands is [.., var last] && last.To == day.AddDays(-1) && last.FloorBar == target.FloorBar && last.CeilingBar == target.CeilingBar)
        {
            bands[^1] = last with { To = day };
        }
        else
        {
            bands.Add(new TargetBand(day, day, target.FloorBar, target.CeilingBar));
        }
    }
}
