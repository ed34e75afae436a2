using System.Globalization;
using Bunit;
using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Features.Soil;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.SoilPages;

public sealed class SoilChartTests : BunitContext
{
    private static readonly DateOnly Today = SmallEstate.Today;

    // Full 300 mm, lower 180 mm, on four days before the season; two days in it.
    private static readonly TubeSeries Tube = new("T1", [.. new[] { (90, 0.30), (89, 0.30), (80, 0.18), (79, 0.18), (9, 0.26), (2, 0.25) }
        .Select(day => new TubeProfile(Today.AddDays(-day.Item1), [0.5, 1.0], [day.Item2, day.Item2]))]);

    private static readonly BlockHistory History = BlockHistory.From(
        SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = StoredEstate.Contents }, "B1")!;

    [Fact]
    public void Depth_runs_downward_and_the_latest_days_differ_by_mark()
    {
        var drawing = new ProfileDrawing(Tube, UnitChoice.Metric);
        Assert.Equal([-2, -9, -79, -80], drawing.Lines.Select(line => line.Profile.Date.DayNumber - Today.DayNumber));
        Assert.Equal(4, drawing.Lines.Select(line => line.Mark).Distinct().Count());
        Assert.All(drawing.Lines, line => Assert.True(Value(line.Points[0].Y) < Value(line.Points[1].Y)));
        Assert.True(Value(drawing.Lines[2].Points[0].X) < Value(drawing.Lines[0].Points[0].X));
        Assert.Equal((0.0, 100.0), (drawing.Depth.Low, drawing.Depth.High));
    }

    [Fact]
    public void The_legend_names_every_day_that_is_drawn()
    {
        var chart = Render<ProfileChart>(p => p.Add(x => x.Series, Tube).Add(x => x.Today, Today));
        Assert.Equal(
            ["Mon 20 Jan, 2 days ago", "Mon 13 Jan, 9 days ago", "Mon 4 Nov, 79 days ago", "Sun 3 Nov, 80 days ago"],
            chart.FindAll(".profile-days li").Select(day => day.TextContent.Trim()));
        Assert.Equal(4, chart.FindAll("svg[role=img] polyline").Count);
    }

    [Fact]
    public void Panels_lie_below_each_other_on_one_axis_of_time()
    {
        var course = new SoilCourse(History, [Tube], UnitChoice.Metric);
        Assert.Equal(["Tension, bar", "Water put on and rain by day, mm", "Water in the soil at tube T1, mm, down to 1.00\u00A0m"], course.Panels.Select(panel => panel.Title));
        Assert.All(course.Panels.Zip(course.Panels.Skip(1)), pair => Assert.True(pair.First.Y.Start < pair.Second.Top));
        // A set and a tube were read two and nine days ago; water was put on nine days ago.
        var tube = Assert.Single(course.Tubes);
        Assert.Equal(tube.Points.Select(point => point.X), course.Sets.TakeLast(2).Select(set => set.X));
        var bar = Assert.Single(course.Applied);
        Assert.Equal(Value(tube.Points[0].X), Value(bar.X) + (Value(bar.Width) / 2), 0.11);
    }

    [Fact]
    public void Water_in_the_soil_lies_between_the_full_and_the_refill_line()
    {
        var tube = new SoilCourse(History, [Tube], UnitChoice.Metric).Tubes[0];
        Assert.All(tube.Points, point => Assert.InRange(Value(point.Y), Value(tube.FullY!), Value(tube.RefillY!)));
        // 250 mm is a sixth of the way from refill at 240 to full at 300.
        Assert.Equal(1.0 / 6, (Value(tube.RefillY!) - Value(tube.Points[1].Y)) / (Value(tube.RefillY!) - Value(tube.FullY!)), 0.01);
    }

    // What is drawn does not move with the unit, but for the round numbers at the ends of its axis: a sixth of the way stays one.
    [Fact]
    public void In_other_units_panels_say_so_and_show_the_same()
    {
        var course = new SoilCourse(History, [Tube], UnitChoice.Us with { Pressure = DisplayUnit.Megapascal });
        Assert.Equal(["Tension, MPa", "Water put on and rain by day, in", "Water in the soil at tube T1, in, down to 39\u00A0in"], course.Panels.Select(panel => panel.Title));
        var tube = course.Tubes[0];
        Assert.Equal(1.0 / 6, (Value(tube.RefillY!) - Value(tube.Points[1].Y)) / (Value(tube.RefillY!) - Value(tube.FullY!)), 0.01);
        // The last set was of 12 bar.
        Assert.Equal(course.Tension.Y.Place(1.2), course.Sets.Last().Y);
        // 1 m is 39.37 in.
        Assert.InRange(new ProfileDrawing(Tube, UnitChoice.Us).Depth.High, 39.37, 60);
    }

    [Fact]
    public void A_tube_not_read_this_season_has_no_panel() =>
        Assert.Empty(new SoilCourse(History, [Tube with { Profiles = [.. Tube.Profiles.Take(4)] }], UnitChoice.Metric).Tubes);

    [Fact]
    public void Rows_count_water_from_the_row_before_to_the_day_before()
    {
        var rows = SoilCourseRow.From(History, [Tube]);
        Assert.Equal([-2, -9, -16, -23], rows.Select(row => row.Date.DayNumber - Today.DayNumber));
        // Two emitters of 2.3 L/h on 2.4 m × 1.5 m: 1.2778 mm/h, six hours in the evening nine days ago.
        Assert.Equal([7.667, 0, 0], rows.Take(3).Select(row => Math.Round(row.AppliedMm!.Value, 3)));
        Assert.Null(rows[3].AppliedMm);
        Assert.Equal((250.0, 260.0), (Math.Round(rows[0].MmByTube["T1"], 6), Math.Round(rows[1].MmByTube["T1"], 6)));
        Assert.Empty(rows[2].MmByTube);
    }

    [Fact]
    public void The_table_says_what_the_drawing_shows()
    {
        var table = Render<SoilCourseTable>(p => p.Add(x => x.Rows, SoilCourseRow.From(History, [Tube])).Add(x => x.Tubes, [Tube]));
        Assert.Equal(["Mon 20 Jan", "12.0 leaf", "250", "7.7", "0.0"], table.FindAll("tbody tr")[0].Children.Select(cell => cell.TextContent));
        Assert.Equal(["Mon 30 Dec", "9.0 leaf", "–", "–", "–"], table.FindAll("tbody tr")[3].Children.Select(cell => cell.TextContent));
    }

    private static double Value(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
