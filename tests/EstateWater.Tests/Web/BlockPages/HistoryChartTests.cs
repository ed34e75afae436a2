using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Parts.Units;
using Plotly.Blazor.Traces;
using Plotly.Blazor.Traces.ScatterLib;
using SymbolEnum = Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum;

namespace EstateWater.Tests.Web.BlockPages;

public sealed class HistoryChartTests
{
    private static readonly BlockHistory History = BlockHistory.From(
        SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1", unwatered: [12, 13, 14], planned: [12, 12, 12], hours: 3), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = StoredEstate.Contents },
        "B1")!;

    [Fact]
    public void Reading_sets_are_dots_with_whiskers()
    {
        var dots = Scatters().Single(trace => trace.Name == "Leaf sets");
        Assert.Equal(["2025-01-06", "2025-01-13", "2025-01-20"], dots.X.TakeLast(3));
        Assert.Equal([10.0, 11.0, 12.0], dots.Y.TakeLast(3));
        Assert.Equal(0.18, dots.ErrorY.Array[^1]);
        Assert.Equal(SymbolEnum.Circle, dots.Marker.Symbol);
    }

    [Fact]
    public void The_outlook_is_a_fan_from_today_without_and_with_the_plan()
    {
        var without = Scatters().Single(trace => trace.Name == "Outlook without water");
        Assert.Equal("2025-01-22", without.X[0]);
        Assert.Equal([12.0, 13.0, 14.0], without.Y);
        Assert.Equal([12.0, 12.0, 12.0], Scatters().Single(trace => trace.Name == "Outlook with the plan").Y);
        Assert.Equal(2, Scatters().Count(trace => trace.Fill == FillEnum.ToNextY));
    }

    [Fact]
    public void Water_temperature_and_air_have_panels_of_their_own_on_one_axis_of_time()
    {
        var layout = HistoryLayout.Of(History, History.SeasonStart, UnitChoice.Metric, []);
        Assert.Single(layout.XAxis);
        Assert.Equal(4, layout.YAxis.Count);
        Assert.Equal("y2", HistoryTraces.Of(History, History.SeasonStart, UnitChoice.Metric).OfType<Bar>().First().YAxis);
        Assert.Equal(["y3", "y4"], Scatters().Where(trace => trace.YAxis is not null).Select(trace => trace.YAxis));
        var domains = layout.YAxis.Select(axis => (Bottom: (decimal)axis.Domain[0], Top: (decimal)axis.Domain[1])).OrderBy(domain => domain.Bottom).ToList();
        Assert.All(domains.Zip(domains.Skip(1)), pair => Assert.True(pair.First.Top < pair.Second.Bottom));
    }

    [Fact]
    public void The_season_begins_where_the_stages_begin_anew()
    {
        var stages = new[] { (-280, 38.0), (-250, 43.0), (-100, 4.0), (-60, 23.0), (-50, 21.0) }.Select(stage => new StageObservation
        {
            BlockCode = "B1",
            Date = SmallEstate.Today.AddDays(stage.Item1),
            ElStage = stage.Item2,
        });
        var snapshot = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = StoredEstate.Contents with { Stages = [.. stages] } };
        Assert.Equal(SmallEstate.Today.AddDays(-100), BlockHistory.From(snapshot, "B1")!.SeasonStart);
        Assert.Equal(SmallEstate.Today.AddDays(-150), BlockHistory.From(snapshot, "B2")!.SeasonStart);
    }

    [Fact]
    public void A_range_leaves_out_what_is_older()
    {
        var recent = HistoryTraces.Of(History, SmallEstate.Today.AddDays(-14), UnitChoice.Metric).OfType<Scatter>().Single(trace => trace.Name == "Leaf sets");
        Assert.Equal(["2025-01-13", "2025-01-20"], recent.X);
    }

    private static IEnumerable<Scatter> Scatters() => HistoryTraces.Of(History, History.SeasonStart, UnitChoice.Metric).OfType<Scatter>();
}
