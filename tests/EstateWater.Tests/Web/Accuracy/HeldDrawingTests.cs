using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Planning.Accuracy;
using EstateWater.Web.Features.Accuracy;

namespace EstateWater.Tests.Web.Accuracy;

public sealed class HeldDrawingTests
{
    [Fact]
    public void Lines_enclose_all_that_is_drawn_and_heights_follow_the_tension()
    {
        // From 8.5 to 13 bar: lines at 8, 10, 12 and 14. The drawing is 190 tall, 8 free above and 24 below: 158 for 6 bar.
        var drawing = new HeldDrawing([Held(6, 13, new TensionBand(8.5, 10, 12)), Held(13, 11, new TensionBand(9, 10, 11))]);
        Assert.Equal([(8, "166"), (10, "113.3"), (12, "60.7"), (14, "8")], drawing.Lines);
        var first = drawing.Marks.First();
        Assert.Equal(("60.7", "113.3", "34.3"), (first.BandTop, first.MiddleY, first.ReadY));
        Assert.Equal("92.2", first.BandHeight); // 3.5 bar of 158 ∕ 6 each.
    }

    [Fact]
    public void Only_the_latest_twelve_are_drawn_and_the_latest_has_its_date()
    {
        var marks = new HeldDrawing([.. Enumerable.Range(1, 20).Select(day => Held(day, 10, new TensionBand(9, 10, 11)))]).Marks.ToList();
        Assert.Equal(Enumerable.Range(9, 12), marks.Select(mark => mark.Held.Date.Day));
        Assert.Equal([11, 14, 17, 20], marks.Where(mark => mark.HasDate).Select(mark => mark.Held.Date.Day));
        Assert.Equal(12, marks.Select(mark => mark.X).Distinct().Count());
    }

    [Fact]
    public void A_single_flat_set_can_be_drawn()
    {
        var drawing = new HeldDrawing([Held(6, 10, new TensionBand(10, 10, 10))]);
        Assert.Equal([10, 12], drawing.Lines.Select(line => line.Bar));
        Assert.Equal("0", drawing.Marks.Single().BandHeight);
    }

    private static HeldAgainst Held(int day, double read, TensionBand expected) =>
        new("B1", new DateOnly(2025, 1, day), WaterPotentialMeasure.Leaf, 7, read, 0, expected, 10, null);
}
