using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Features.Soil;

namespace EstateWater.Web.Features.Plan;

/// <summary>The blocks of an estate as the planner takes them.</summary>
internal sealed class PlanBlocks(EstateContents contents, DateTimeOffset asOf, DateOnly today)
{
    private readonly ILookup<string, StageObservation> stages = contents.Stages.Where(s => s.Date <= today).ToLookup(s => s.BlockCode);
    private readonly ILookup<string, ChamberReading> readings = contents.ChamberReadings.Where(r => r.TakenAt <= asOf).ToLookup(r => r.BlockCode);
    private readonly ILookup<string, SoilMoisture> soil = contents.SoilMoistures.Where(s => s.Date <= today).ToLookup(s => s.BlockCode);
    private readonly WaterContents waterContents = new(contents.ProbeCalibrations);
    private readonly ILookup<string, CanopyVisit> canopy = contents.CanopyVisits.Where(c => c.Date <= today).ToLookup(c => c.BlockCode);

    public IReadOnlyList<PlanBlock> All() => [.. contents.Blocks.OrderBy(b => b.Code, StringComparer.Ordinal).Select(One)];

    private PlanBlock One(Block block)
    {
        var middle = block.Outline.Centroid;
        return new PlanBlock
        {
            Code = block.Code,
            StationCode = block.StationCode,
            ValveCode = block.ValveCode,
            IsWhite = block.Fruit == FruitColour.White,
            LongitudeDegrees = middle.X,
            LatitudeDegrees = middle.Y,
            AreaM2 = block.AreaM2,
            RowSpacingM = block.RowSpacingM,
            VineSpacingM = block.VineSpacingM,
            EmittersPerVine = block.EmittersPerVine,
            EmitterFlowLPerH = block.EmitterFlowLPerH,
            EmissionUniformity = block.EmissionUniformity,
            RootDepthM = block.RootDepthM,
            AvailableWaterMmPerM = block.AvailableWaterMmPerM,
            WettedFraction = block.WettedFraction,
            ShadedFraction = block.ShadedFraction,
            Priority = block.Priority,
            Stages = [.. stages[block.Code].OrderBy(s => s.Date).Select(s => new ObservedStage(s.Date, s.ElStage))],
            Targets = Targets(block),
            Readings = [.. readings[block.Code]
                .OrderBy(r => r.TakenAt).ThenBy(r => r.Group, StringComparer.Ordinal).ThenBy(r => r.Vine, StringComparer.Ordinal).ThenBy(r => r.TensionBar)
                .Select(r => new LeafReading(r.TakenAt, r.Measure, r.TensionBar, r.Group, r.Vine, r.Exposure, r.BaggedMin, r.DelayS))],
            SoilProfiles = Profiles(block),
            CanopyLooks = [.. canopy[block.Code].OrderBy(c => c.Date).Select(c => new CanopyLook(c.Date, c.ShootLengthCm, c.ShadedFraction, c.GrowingTipsPct, c.VisualStress))],
        };
    }

    /// <summary>A block's own targets before those of its fruit, and those before the estate's.</summary>
    private List<StageTarget> Targets(Block block)
    {
        var mine = contents.Targets.Where(t => (t.BlockCode is null || t.BlockCode == block.Code) && (t.Fruit is null || t.Fruit == block.Fruit)).ToList();
        var nearest = mine.Where(t => t.BlockCode is not null).ToList();
        if (nearest.Count == 0)
        {
            nearest = mine.Where(t => t.Fruit is not null).ToList();
        }

        return [.. (nearest.Count > 0 ? nearest : mine)
            .OrderBy(t => t.FromElStage)
            .Select(t => new StageTarget(t.FromElStage, t.ToElStage, t.Measure, t.FloorBar, t.CeilingBar))];
    }

    private List<SoilProfile> Profiles(Block block) =>
        [.. soil[block.Code].GroupBy(s => (s.Date, s.Tube))
            .OrderBy(g => g.Key.Date).ThenBy(g => g.Key.Tube, StringComparer.Ordinal)
            .Select(g => new SoilProfile(
                g.Key.Date,
                g.Key.Tube,
                [.. g.OrderBy(s => s.DepthCm).Select(s => (s.DepthCm, Content: waterContents.Of(s))).Where(s => s.Content is not null).Select(s => new DepthWater(s.DepthCm / 100, s.Content!.Value))]))
            .Where(p => p.Depths.Count > 0)];
}
