using Bunit;
using EstateWater.Planning;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class SetBoardTests : BunitContext
{
    private static readonly WeekBlock[] Blocks = [new("B01", null, "V01", [], null), new("B02", null, "V02", [], null), new("B03", null, "V02", [], null)];

    [Fact]
    public void Every_bar_names_its_valve_and_blocks_also_the_shortest() => Assert.Equal(
        ["V01 · B01", "V02 · B02 B03", "V99"],
        Board([Samples.Set("V01", 22, 20, 0.25), Samples.Set("V02", 22, 21, 12), Samples.Set("V99", 22, 22, 1)]).FindAll(".bars text").Select(t => t.TextContent));

    [Fact]
    public void Every_bar_leads_to_the_row_that_says_the_same()
    {
        var plan = Samples.Plan();
        var board = Board(plan.Sets);
        var table = Render<SetTable>(p => p
            .Add(t => t.Sets, plan.Sets)
            .Add(t => t.Blocks, Blocks));
        var rows = table.FindAll("tbody tr").Select(r => $"week#{r.Id}").ToList();
        Assert.Equal(rows, board.FindAll("a").Select(a => a.GetAttribute("href")));
        Assert.Equal(
            ["V01 · B01 on bore, Wed 22 Jan 20:00 to 02:00, 6 h, 30\u00A0m³/h", "V02 · B02 B03 on bore, Wed 22 Jan 20:00 to 00:00, 4 h, 30\u00A0m³/h"],
            board.FindAll("a").Select(a => a.GetAttribute("aria-label")));
        Assert.Contains("B02", table.FindAll("tbody tr")[1].TextContent);
        Assert.Equal("2 sets, 10 h, 300 m³: each as a row", table.Find("details:not([open]) > summary").TextContent.Replace('\u00A0', ' '));
    }

    [Fact]
    public void A_source_says_how_much_of_its_flow_is_used() =>
        Assert.Contains("peak 60 m³/h of 100 m³/h", Board(Samples.Plan().Sets).Find("h3").TextContent.Replace('\u00A0', ' '));

    [Fact]
    public void Nights_and_bars_say_where_they_stand_for_dragging()
    {
        var board = Board([Samples.Set("V01", 22, 23, 2.5)]);
        var night = board.Find(".night");
        Assert.Equal(("bore", "2025-01-22", "56"), (night.GetAttribute("data-source"), night.GetAttribute("data-night"), night.GetAttribute("data-quarters")));
        var bar = board.Find("a");
        Assert.Equal(("set-V01-202501222100", "12", "10"), (bar.GetAttribute("data-set"), bar.GetAttribute("data-start"), bar.GetAttribute("data-quarters")));
        Assert.Single(board.FindAll(".end"));
    }

    [Fact]
    public void Without_sets_it_says_that_nothing_needs_water() =>
        Assert.Equal("No sets: nothing needs water in these 10 days.", Board([]).Find("p").TextContent);

    [Theory]
    [InlineData(true, 0, "These hours cannot be fitted into the nights any better.")]
    // Found 90 of a bound of 100: the bound is a ninth better.
    [InlineData(false, 10, "No better way to fit these hours into the nights was found; one that is up to 11.2 % better may exist.")]
    [InlineData(false, 1.14, "No better way to fit these hours into the nights was found; one that is up to 1.2 % better may exist.")]
    public void The_packing_says_how_good_it_is(bool optimal, double gapPct, string words) =>
        Assert.Equal(words, WeekWords.Packing(new PackingQuality(10, 10, gapPct, optimal), UnitChoice.Metric));

    private IRenderedComponent<SetBoard> Board(IReadOnlyList<PlannedSet> sets) => Render<SetBoard>(p => p
        .Add(b => b.Sets, sets)
        .Add(b => b.Sources, [Samples.Bore])
        .Add(b => b.Blocks, Blocks)
        .Add(b => b.Zone, Samples.Zone)
        .Add(b => b.HorizonDays, 10));
}
