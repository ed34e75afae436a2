using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Blocks;

namespace EstateWater.Tests.Web.BlockPages;

public sealed class TargetBandsTests
{
    private static readonly DateOnly Start = new(2024, 12, 1);

    private static readonly Block Red = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1")).Contents.Blocks[0];

    // Stage 20 on the first day, 30 ten days later: one stage a day.
    private static readonly StageObservation[] Stages = [Stage(0, 20), Stage(10, 30)];

    [Fact]
    public void A_target_by_stage_becomes_a_band_by_date() =>
        Assert.Equal(
            [new TargetBand(Start.AddDays(2), Start.AddDays(4), 5, 10), new TargetBand(Start.AddDays(5), Start.AddDays(12), 10, 14)],
            Bands([TargetOf(22, 25, 5, 10), TargetOf(25, 35, 10, 14)], 12));

    [Fact]
    public void A_target_for_the_block_goes_before_its_fruits_and_that_before_everyones() =>
        Assert.Equal(
            [new TargetBand(Start, Start.AddDays(3), 3, 4), new TargetBand(Start.AddDays(4), Start.AddDays(5), 2, 3), new TargetBand(Start.AddDays(6), Start.AddDays(6), 1, 2)],
            Bands([TargetOf(20, 40, 1, 2), TargetOf(20, 26, 2, 3, fruit: FruitColour.Red), TargetOf(20, 24, 3, 4, block: "B1")], 6));

    [Fact]
    public void Targets_of_other_blocks_fruits_and_measures_do_not_hold() =>
        Assert.Empty(Bands([TargetOf(20, 40, 1, 2, block: "B2"), TargetOf(20, 40, 1, 2, fruit: FruitColour.White), TargetOf(20, 40, 1, 2, measure: WaterPotentialMeasure.Stem)], 6));

    [Fact]
    public void Before_the_first_stage_nothing_is_wanted_and_after_the_last_it_stays()
    {
        Assert.Null(TargetBands.StageOn(Start.AddDays(-1), Stages));
        Assert.Equal(23, TargetBands.StageOn(Start.AddDays(3), Stages));
        Assert.Equal(30, TargetBands.StageOn(Start.AddDays(40), Stages));
    }

    private static IReadOnlyList<TargetBand> Bands(Target[] targets, int days) =>
        TargetBands.For(Red, WaterPotentialMeasure.Leaf, Stages, targets, Start, Start.AddDays(days));

    private static StageObservation Stage(int day, double stage) => new() { BlockCode = "B1", Date = Start.AddDays(day), ElStage = stage };

    private static Target TargetOf(
        double from, double to, double floor, double ceiling, string? block = null, FruitColour? fruit = null, WaterPotentialMeasure measure = WaterPotentialMeasure.Leaf) => new()
        {
            BlockCode = block,
            Fruit = fruit,
            FromElStage = from,
            ToElStage = to,
            Measure = measure,
            FloorBar = floor,
            CeilingBar = ceiling,
        };
}
