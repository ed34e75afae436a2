using AngleSharp.Dom;
using Bunit;
using EstateWater.Planning;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Hosting;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using Microsoft.Extensions.DependencyInjection;
using static EstateWater.Tests.Web.SmallEstate;

namespace EstateWater.Tests.Web.EstatePages;

public sealed class EstatePartsTests : BunitContext
{
    private static readonly BlockPlan[] Three =
    [
        BlockPlanOf("B3", rank: 2) with { Latest = Latest("severe") },
        BlockPlanOf("B1", rank: 1, unwatered: [13, 13.5, 15.2], hours: 6.25) with { Latest = Latest("none") },
        BlockPlanOf("B2", rank: 3) with { Latest = null },
    ];

    [Fact]
    public void Each_block_of_the_map_is_a_link_with_its_name_and_class_in_words()
    {
        var links = Map().FindAll("svg[data-map] a");
        Assert.Equal(["/blocks/B1", "/blocks/B3", "/blocks/B2"], links.Select(link => link.GetAttribute("href")));
        Assert.Equal(
            ["B1 Block 1, stress none", "B3 Block 3, stress severe", "B2 Block 2, no recent reading"],
            links.Select(link => link.GetAttribute("aria-label")));
        Assert.Equal(["s0", "s4", "su"], links.Select(link => link.ClassName));
        Assert.Equal(["url(#s0)", "url(#s4)", "url(#su)"], links.Select(link => link.QuerySelector("path")!.GetAttribute("fill")));
    }

    [Fact]
    public void The_map_is_one_stop_of_the_tab_key() =>
        Assert.Equal(["0", "-1", "-1"], Map().FindAll("svg[data-map] a").Select(link => link.GetAttribute("tabindex")));

    [Fact]
    public void Every_pattern_that_a_block_names_is_defined_once()
    {
        var map = Map();
        foreach (var look in StressLook.Classes.Append(StressLook.Unknown))
        {
            Assert.Single(map.FindAll($"pattern#{look.Key}"));
        }
    }

    [Fact]
    public void The_legend_counts_the_blocks_of_each_class() =>
        Assert.Equal(
            ["○ none (1)", "◔ weak (0)", "◑ moderate to weak (0)", "◕ moderate to severe (0)", "● severe (1)", "? no recent reading (1)"],
            Map().FindAll(".legend li").Select(Words));

    [Fact]
    public void The_list_tells_the_same_blocks_in_the_same_order_as_the_map()
    {
        var rows = List().FindAll("tbody tr");
        Assert.Equal(["B1", "B3", "B2"], rows.Select(row => row.GetAttribute("data-block")));
        Assert.Equal(
            ["B1 Block 1", "○ none", "12.3 ± 0.4 yesterday", "10.0–14.0 leaf", "15.2 over Friday", "6.25 h"],
            rows[0].Children.Select(Words));
        Assert.Equal(
            ["B2 Block 2", "? no recent reading", "never read", "10.0–14.0 leaf", "12.0 Friday", "–"],
            rows[2].Children.Select(Words));
    }

    [Fact]
    public void A_reading_older_than_ten_days_gives_no_class()
    {
        var old = BlockRow.From(Snapshot(BlockPlanOf("B1") with { Latest = Latest("severe", daysAgo: 11) }));
        var recent = BlockRow.From(Snapshot(BlockPlanOf("B1") with { Latest = Latest("severe", daysAgo: 10) }));
        Assert.Equal((StressLook.Unknown, StressLook.Classes[4]), (old[0].Look, recent[0].Look));
    }

    [Fact]
    public void Shows_five_decisions_and_where_the_rest_is()
    {
        var snapshot = Snapshot([.. Enumerable.Range(1, 7).Select(rank => BlockPlanOf($"B{rank}", rank, hours: 2)), BlockPlanOf("B8", 8)]);
        var list = Render<DecisionList>(p => p.Add(x => x.Decisions, Decision.From(BlockRow.From(snapshot), snapshot.Plan)));
        Assert.Equal(["B1 Block 1", "B2 Block 2", "B3 Block 3", "B4 Block 4", "B5 Block 5"], list.FindAll("li > a").Select(Words));
        Assert.Equal("Reason of B1.", list.Find("li p").TextContent);
        Assert.Equal("Two more in the week’s plan", list.Find("a[href='/week']").TextContent);
    }

    [Fact]
    public void What_does_not_fit_is_a_decision_even_when_no_hours_are_planned()
    {
        var plan = PlanOf(BlockPlanOf("B1"), BlockPlanOf("B2", 2)) with { Unmet = [new UnmetNeed("B2", 4, "no hours left.")] };
        var list = Render<DecisionList>(p => p.Add(x => x.Decisions, Decision.From(BlockRow.From(Snapshot(plan)), plan)));
        Assert.Equal("4 h do not fit: no hours left.", Words(Assert.Single(list.FindAll(".unmet"))));
    }

    [Fact]
    public void Nothing_to_decide_is_said() =>
        Assert.Contains("Nothing needs water", Render<DecisionList>(p => p.Add(x => x.Decisions, [])).Markup, StringComparison.Ordinal);

    [Fact]
    public void An_empty_database_says_what_to_do_first()
    {
        var file = Path.Combine(Path.GetTempPath(), "our own.db");
        Services.AddSingleton(new ServeOptions { DatabaseFile = file });
        var empty = Render<NoEstateYet>();
        Assert.Equal("No estate yet", empty.Find("h1").TextContent);
        Assert.EndsWith($"import --data my-estate --database \"{file}\"", empty.Find("code").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_brief_tells_heat_water_and_what_jumped()
    {
        var snapshot = Snapshot(PlanOf(Three) with { HeatSpells = [new PlannedHeatSpell("home", Today.AddDays(2), Today.AddDays(5), 39.4)] });
        var view = EstateView.From(snapshot, UnitChoice.Metric) with
        {
            SuddenRises = [new SuddenRise("B3", default, Today.AddDays(-2), 9, 13, 3.9, -0.2, 8)],
        };
        var brief = Render<EstateBrief>(p => p.Add(x => x.View, view).Add(x => x.Today, Today));
        Assert.Contains("Fri 24 Jan to Mon 27 Jan, up to 39 °C at the station home.", brief.Markup, StringComparison.Ordinal);
        Assert.Equal("/blocks/B3", brief.Find(".rise a").GetAttribute("href"));
        Assert.Contains("B3 jumped from 9.0 to 13.0 bar on Mon 20 Jan, 3.9 above its own trend, while its neighbours changed by −0.2 bar.", Words(brief.Find(".rise")), StringComparison.Ordinal);
        Assert.Contains("dam: 400 m³ of 1\u202F000 m³ left after this plan’s 120 m³", Words(brief.Find(".water")), StringComparison.Ordinal);
        Assert.Equal("width:40%", brief.Find(".bar span").GetAttribute("style"));
    }

    private IRenderedComponent<BlockMap> Map() => Render<BlockMap>(p => p.Add(x => x.Rows, BlockRow.From(Snapshot(Three))));

    private IRenderedComponent<BlockList> List() => Render<BlockList>(p => p.Add(x => x.Rows, BlockRow.From(Snapshot(Three))).Add(x => x.Today, Today));

    private static string Words(IElement element) => string.Join(' ', element.TextContent.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
