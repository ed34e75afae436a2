using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Simulation.Demo;

namespace EstateWater.Tests.Demo;

/// <summary>The troubles the demo shows are in the folder's own numbers.</summary>
public sealed class DemoTroubleTests
{
    private static readonly EstateContents Estate = EstateFolder.Read(DemoFolderTests.Folder()).Contents!;

    [Fact]
    public void Meter_of_the_blocked_valve_falls_short_in_its_last_three_sets_and_tension_climbs()
    {
        var block = Block(DemoEstate.BehindBlockedValve);
        var flow = block.EmittersPerVine * block.EmitterFlowLPerH * block.AreaM2 / (block.RowSpacingM * block.VineSpacingM) / 1000;
        var last = Estate.AppliedWaters.Where(w => w.ValveCode == block.ValveCode).TakeLast(3).ToList();
        Assert.All(last, w => Assert.InRange(w.MeterM3!.Value / (w.Hours * flow), 0.2, 0.5));
        Assert.True(Mean(block.Code, 0) > Mean(block.Code, 1) && Mean(block.Code, 1) > Mean(block.Code, 2));
    }

    [Fact]
    public void Burst_block_jumps_though_hours_and_meter_look_right_and_its_neighbours_stay()
    {
        var block = Block(DemoEstate.BurstLine);
        var flow = block.EmittersPerVine * block.EmitterFlowLPerH * block.AreaM2 / (block.RowSpacingM * block.VineSpacingM) / 1000;
        var lastWeek = Estate.AppliedWaters.Where(w => w.ValveCode == block.ValveCode && w.StartedAt > DemoEstate.Clock.AddDays(-8)).ToList();
        Assert.True(lastWeek.Count >= 2);
        Assert.All(lastWeek, w => Assert.InRange(w.MeterM3!.Value / (w.Hours * flow), 0.7, 1.1));
        Assert.True(Mean(block.Code, 0) - Mean(block.Code, 1) > 5);
        Assert.All(["A5", "B6"], neighbour => Assert.True(Mean(neighbour, 0) - Mean(neighbour, 1) < 2));
    }

    [Fact]
    public void Badly_read_block_was_read_late_in_the_shade_and_slowly()
    {
        var last = LastSet(DemoEstate.BadlyRead, 0);
        Assert.All(last, r => Assert.True(r.DelayS > 60));
        Assert.All(last, r => Assert.True(r.TakenAt.TimeOfDay > TimeSpan.FromHours(16)));
        Assert.Contains(last, r => r.Exposure == LeafExposure.Shade);
        Assert.True(last.Max(r => r.TensionBar) - last.Min(r => r.TensionBar) > 5);
    }

    [Fact]
    public void New_block_was_never_read() =>
        Assert.DoesNotContain(Estate.ChamberReadings, r => r.BlockCode == DemoEstate.NewlyPlanted);

    [Fact]
    public void Wet_blocks_stand_under_their_floor_and_thirsty_ones_near_their_ceiling()
    {
        Assert.All(DemoEstate.TooWet, b => Assert.True(Mean(b, 0) < Band(b).FloorBar - 1, $"{b} at {Mean(b, 0):0.0}"));
        Assert.All(DemoEstate.TooWet, b => Assert.True(Estate.CanopyVisits.Last(v => v.BlockCode == b).GrowingTipsPct > 30));
        Assert.All(DemoEstate.Thirsty, b => Assert.True(Mean(b, 0) > Band(b).CeilingBar - 2.2, $"{b} at {Mean(b, 0):0.0}"));
    }

    private static Block Block(string code) => Estate.Blocks.First(b => b.Code == code);

    private static List<ChamberReading> LastSet(string block, int back)
    {
        var day = DemoEstate.ClockDay.AddDays(-1 - (7 * back));
        return [.. Estate.ChamberReadings.Where(r => r.BlockCode == block && DateOnly.FromDateTime(r.TakenAt.DateTime) == day)];
    }

    private static double Mean(string block, int back) => LastSet(block, back).Average(r => r.TensionBar);

    private static Target Band(string code)
    {
        var stage = Estate.Stages.Where(s => s.BlockCode == code).MaxBy(s => s.Date)!.ElStage;
        return Estate.Targets.Where(t => stage >= t.FromElStage && stage < t.ToElStage && (t.BlockCode == code || (t.BlockCode is null && t.Fruit == Block(code).Fruit)))
            .OrderBy(t => t.BlockCode is null).First();
    }
}
