using Bunit;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Week;

namespace EstateWater.Tests.Web.Week;

public sealed class BlockHoursTableTests : BunitContext
{
    private readonly List<(string Block, double Hours)> given = [];
    private readonly List<string> givenBack = [];

    [Fact]
    public void A_row_says_latest_target_peaks_and_reason()
    {
        var cells = Table([]).FindAll("tbody tr")[0].Children.Select(c => Squeeze(c.TextContent)).ToList();
        Assert.Equal("1", cells[0]);
        Assert.Equal("B01 Long Rows with B02 on V01", cells[1]);
        Assert.Equal("13.2 bar ± 0.4 moderate Mon 20 Jan", cells[2]);
        Assert.Equal("10.0–14.0", cells[3]);
        Assert.Equal("14.6 (16.0)", cells[4]);
        Assert.Equal("13.3 (14.2)", cells[5]);
        Assert.Equal("Water 6 h by Thursday night.", cells[8]);
    }

    [Fact]
    public void Changed_hours_name_their_block()
    {
        Table([]).Find("#hours-B02").Change("5,25");
        Assert.Equal([("B02", 5.25)], given);
    }

    [Fact]
    public void Hours_by_hand_are_marked_and_can_be_given_back()
    {
        var table = Table(new() { ["B02"] = 7 });
        Assert.Equal("7", table.Find("#hours-B02").GetAttribute("value"));
        Assert.Contains("4 h planned", table.FindAll("tbody tr")[1].TextContent);
        table.Find("tr.by-hand button").Click();
        Assert.Equal(["B02"], givenBack);
    }

    [Fact]
    public void Where_sets_are_placed_by_hand_hours_cannot_be_typed()
    {
        var table = Table([], edits: WeekEdits.None.WithSets("V01", [new SetPinned("V01", Samples.AsOf.AddHours(14), 6)], []));
        Assert.Empty(table.FindAll("#hours-B01"));
        Assert.Contains("6 h sets placed by hand", Squeeze(table.FindAll("tbody tr")[0].TextContent));
        Assert.NotEmpty(table.FindAll("#hours-B02"));
    }

    [Fact]
    public void A_block_that_was_never_read_says_so()
    {
        var plan = Samples.Plan();
        plan = plan with { Blocks = [plan.Blocks[0] with { Latest = null, Outlook = [] }] };
        var row = Table([], plan).Find("tbody tr");
        Assert.Contains("no reading yet", row.TextContent);
        Assert.Contains("no outlook", row.TextContent);
    }

    [Fact]
    public void The_outlook_says_in_words_what_it_draws()
    {
        var spark = Table([]).Find("svg");
        Assert.Equal(
            "Outlook of B01 to Thu 23 Jan: without water 14.6 bar (13.1 to 16.0), as planned 12.1 bar (11.0 to 13.2), floor 10.0, ceiling 14.0 bar",
            spark.GetAttribute("aria-label"));
    }

    [Fact]
    public void The_outlook_is_drawn_to_scale()
    {
        // Scale from 10 to 16 bar over the height: 14 bar lies a third of the way down.
        var scale = SparkGeometry.For(Samples.Plan().Blocks);
        Assert.Equal((10, 16), (scale.LowBar, scale.HighBar));
        Assert.Equal(SparkGeometry.Height / 3, scale.Y(14), 0.05);
        Assert.Equal("0,21.6 132,11.2", scale.Line(Samples.Block("B01", 1, 6).Outlook, d => d.UnwateredBar.P50));
    }

    private IRenderedComponent<BlockHoursTable> Table(Dictionary<string, double> byHand, EstateWater.Planning.Plan? plan = null, WeekEdits? edits = null) =>
        Render<BlockHoursTable>(p => p
            .Add(t => t.Plan, plan ?? Samples.Plan())
            .Add(t => t.Blocks, new Dictionary<string, WeekBlock> { ["B01"] = new("B01", "Long Rows", "V01", ["B02"], "Syrah") })
            .Add(t => t.Edits, edits ?? WeekEdits.None with { HoursByHand = byHand })
            .Add(t => t.OnHours, given.Add)
            .Add(t => t.OnGiveBack, givenBack.Add));

    private static string Squeeze(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
