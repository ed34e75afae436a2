using AngleSharp.Dom;
using Bunit;
using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Report;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;
using static EstateWater.Tests.Web.SmallEstate;

namespace EstateWater.Tests.Web.Report;

public sealed class BlockReportTests : BunitContext
{
    private static readonly EstateSnapshot Estate = Snapshot(BlockPlanOf("B1", hours: 6, unwatered: [11, 13, 15], planned: [11, 12, 12.5]), BlockPlanOf("B2", 2) with { Latest = null }) with
    {
        Contents = StoredEstate.Contents with
        {
            ChamberReadings = [.. StoredEstate.Contents.ChamberReadings.Where(leaf => leaf.BlockCode == "B1").Select((leaf, i) => i == 0 ? leaf with { Note = "Windy." } : leaf)],
            CanopyVisits = [new CanopyVisit { BlockCode = "B1", Date = Today.AddDays(-8), ShootLengthCm = 105, GrowingTipsPct = 40, ShadedFraction = 0.31, VisualStress = 1, Note = "Hail marks" }],
        },
    };

    [Fact]
    public void Readings_stand_beside_what_was_wanted_at_their_stage()
    {
        var card = Card("B1");
        // The target wants 9 to 13 bar at every stage.
        Assert.Equal(["20 Jan, 2 days ago", "12.0 ± 0.2", "5", "9.0–13.0", "within"], Cells(Part(card, "Readings: leaf tension, bar").QuerySelector("tbody tr")!));
        Assert.Contains("stage 27 setting seen 60 days ago", card.Find(".about").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(13.04, "within")]
    [InlineData(13.2, "0.2 over")]
    [InlineData(8.4, "0.6 under")]
    public void A_reading_is_above_within_or_under(double bar, string expected)
    {
        var leaf = StoredEstate.Contents.ChamberReadings[0] with { TensionBar = bar };
        var set = new EstateWater.Web.Features.Readings.ReadingSet("B1", leaf.Measure, Today, [leaf]);
        Assert.Equal(expected, new ReadAgainstTarget(set, new EstateWater.Web.Features.Blocks.TargetBand(Today, Today, 9, 13)).Words(UnitChoice.Metric));
        Assert.Equal("no target then", new ReadAgainstTarget(set, null).Words(UnitChoice.Metric));
    }

    [Fact]
    public void A_block_that_was_never_read_says_so()
    {
        var card = Card("B2");
        Assert.Equal("Never read.", Part(card, "Readings").QuerySelector("p")!.TextContent);
        Assert.Equal("? no recent reading", Words(card.Find("h2 .class")));
    }

    [Fact]
    public void A_block_without_a_recent_reading_says_how_old_the_latest_is()
    {
        var old = Estate with { Plan = PlanOf(BlockPlanOf("B1") with { Latest = Latest("weak", daysAgo: 15) }, Estate.Plan.Blocks[1]) };
        Assert.Contains("No recent reading: the latest is of Tue 7 Jan, 15 days ago.", Words(Part(Card("B1", old), "Readings: leaf tension, bar")), StringComparison.Ordinal);
    }

    [Fact]
    public void Outlook_recommendation_and_numbers_come_from_the_plan()
    {
        var card = Card("B1");
        Assert.Contains("Reason of B1.", Words(Part(card, "Recommendation")), StringComparison.Ordinal);
        var rows = Part(card, "Outlook, bar").QuerySelectorAll("tbody tr");
        Assert.Equal(["Without water", "10.0–11.0–12.0", "14.0–15.0–16.0 on Fri 24"], Cells(rows[0]));
        Assert.Equal(["As planned", "10.0–11.0–12.0", "11.5–12.5–13.5 on Fri 24"], Cells(rows[1]));
        Assert.Single(card.FindAll("polygon.fan-planned"));
        Assert.Empty(Card("B2").FindAll("polygon.fan-planned"));
    }

    [Fact]
    public void Soil_canopy_and_notes_carry_their_age()
    {
        var card = Card("B1");
        Assert.Equal(["T1, Mon 20 Jan", "28.0"], Cells(Part(card, "Soil water").QuerySelector("tbody tr")!));
        var canopy = Words(Part(card, "Canopy and notes"));
        Assert.Contains("Tue 14 Jan, 8 days ago: Shoots 105 cm; tips still growing 40 %; ground shaded at noon 31 %; stress seen: tips slowing (1 of 3).", canopy, StringComparison.Ordinal);
        Assert.Contains("Notes: Hail marks; Windy.", canopy, StringComparison.Ordinal);
        Assert.Equal("No tube is read in this block.", Part(Card("B2"), "Soil water").QuerySelector("p")!.TextContent);
    }

    [Fact]
    public void Water_of_the_season_is_counted_from_its_first_day()
    {
        // 6 h nine days ago: 7.667 mm; no rain on any of the sixty days measured.
        var water = Words(Part(Card("B1"), "Water put on"));
        Assert.Contains("Past 7 days: no water. No plan was published for these days.", water, StringComparison.Ordinal);
        Assert.Contains("Since Sat 23 Nov: 8 mm put on by hours and declared flow, 0 mm rain.", water, StringComparison.Ordinal);
    }

    [Fact]
    public void Hot_days_are_marked_and_every_block_shares_one_axis()
    {
        var hot = Estate with { Plan = Estate.Plan with { HeatSpells = [new PlannedHeatSpell("home", Today.AddDays(1), Today.AddDays(1), 40)] } };
        var blocks = ViewOf(hot).Blocks;
        Assert.Equal([false, true, false], new OutlookDrawing(blocks[0]).Days.Select(day => day.IsHot));
        Assert.Same(blocks[0].TensionBar, blocks[1].TensionBar);
        // The wettest p10 and the floor are 10 bar, the driest p90 is 16.
        Assert.Equal((10.0, 16.0), (blocks[0].TensionBar.Low, blocks[0].TensionBar.High));
    }

    [Theory]
    [InlineData(3, new[] { 0, 2 })]
    [InlineData(11, new[] { 0, 2, 4, 6, 8, 10 })]
    [InlineData(15, new[] { 0, 3, 6, 9, 12 })]
    public void So_many_days_are_named_as_have_room(int days, int[] named)
    {
        var estate = Estate with { Plan = PlanOf(BlockPlanOf("B1", unwatered: [.. Enumerable.Repeat(11.0, days)]), Estate.Plan.Blocks[1]) };
        Assert.Equal(named.Select(day => Today.AddDays(day)), new OutlookDrawing(ViewOf(estate).Blocks[0]).Days.Where(day => day.IsNamed).Select(day => day.Day));
        Assert.Equal("Wed 22", Card("B1", estate).FindAll(".outlook text.axis")[0].TextContent);
    }

    [Theory]
    [InlineData(0.997, "Chance of passing the ceiling without water: over 99 % on Thu 23 Jan.")]
    [InlineData(0.54, "Chance of passing the ceiling without water: highest on Thu 23 Jan, 54 %.")]
    [InlineData(0.004, "Chance of passing the ceiling without water: under 1 % on every day.")]
    public void The_chance_is_told_in_plain_words(double chance, string words)
    {
        var risky = BlockPlanOf("B1") with { Risks = [new DayRisk(Today, 0, false), new DayRisk(Today.AddDays(1), chance, false)] };
        Assert.Contains(words, Words(Part(Card("B1", Estate with { Plan = PlanOf(risky, Estate.Plan.Blocks[1]) }), "Outlook, bar")), StringComparison.Ordinal);
    }

    [Fact]
    public void Five_hundred_blocks_share_the_weather_that_is_reckoned_once_a_station()
    {
        var many = Snapshot([.. Enumerable.Range(1, 500).Select(rank => BlockPlanOf($"B{rank}", rank))]);
        var blocks = ViewOf(many).Blocks;
        Assert.Equal(500, blocks.Count);
        Assert.All(blocks, block => Assert.Same(blocks[0].Weather, block.Weather));
        Assert.Equal(500, blocks.Select(block => block.Anchor).Distinct().Count());
    }

    private static ReportView ViewOf(EstateSnapshot snapshot) =>
        ReportView.From(snapshot, [], ReportChoice.Parse(null, null, null, snapshot.Contents.Blocks.Select(block => block.Code).ToHashSet()), UnitChoice.Metric);

    private IRenderedComponent<BlockReportCard> Card(string code, EstateSnapshot? snapshot = null) => Render<BlockReportCard>(p => p
        .Add(x => x.Report, ViewOf(snapshot ?? Estate).Blocks.Single(block => block.Row.Block.Code == code))
        .Add(x => x.Today, Today)
        .Add(x => x.Zone, Estate.TimeZone));

    private static IElement Part(IRenderedComponent<BlockReportCard> card, string title) =>
        card.FindAll(".part").Single(part => part.QuerySelector("h3")!.TextContent == title);

    private static IEnumerable<string> Cells(IElement row) => row.Children.Select(Words);

    private static string Words(IElement element) => string.Join(' ', element.TextContent.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
