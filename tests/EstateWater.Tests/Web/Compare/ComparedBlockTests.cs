using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Compare;
using EstateWater.Web.Features.Estate;

namespace EstateWater.Tests.Web.Compare;

public sealed class ComparedBlockTests
{
    [Fact]
    public void Water_and_readings_stand_beside_those_of_a_year_before_at_the_same_date()
    {
        var stored = StoredEstate.Contents;
        var snapshot = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with
        {
            Contents = stored with
            {
                AppliedWaters =
                [
                    Water(0, -9, 6),
                    Water(-1, -9, 4),
                    Water(-1, 5, 100), // later in the season than today
                    Water(-2, -9, 100), // two seasons ago
                ],
                ChamberReadings = [Leaf(0, -2, 12), Leaf(-1, -3, 9), Leaf(-2, -3, 5)],
            },
        };
        var block = ComparedBlock.From(BlockRow.From(snapshot)[0], snapshot);

        // 2 emitters of 2.3 L/h on 2.4 m × 1.5 m give 1.2778 mm/h.
        Assert.Equal(6 * 1.27778, block.Water!.Mm, 0.001);
        Assert.Equal(4 * 1.27778, block.WaterBefore!.Mm, 0.001);
        Assert.Equal([(true, 9.0), (false, 12.0)], block.Readings.Select(r => (r.IsPast, r.Set.MeanBar)));
    }

    [Fact]
    public void Without_records_of_the_year_before_none_are_made_up()
    {
        var snapshot = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"));
        var block = ComparedBlock.From(BlockRow.From(snapshot)[0], snapshot);
        Assert.Null(block.Water);
        Assert.Null(block.WaterBefore);
        Assert.Empty(block.Readings);
    }

    private static AppliedWater Water(int years, int days, double hours) => new() { ValveCode = "V1", StartedAt = SmallEstate.AsOf.AddYears(years).AddDays(days), Hours = hours };

    private static ChamberReading Leaf(int years, int days, double bar) => StoredEstate.Contents.ChamberReadings[0] with
    {
        BlockCode = "B1",
        TakenAt = SmallEstate.AsOf.AddYears(years).AddDays(days),
        TensionBar = bar,
    };
}
