using AngleSharp.Dom;
using Bunit;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Planning.Accuracy;
using EstateWater.Web.Features.Accuracy;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.Accuracy;

public sealed class AccuracyPartsTests : BunitContext
{
    private static readonly AccuracyReport Report = new(
    [
        Held("B1", 1, day: 6, read: 10, expected: 10.5, noChange: 9, line: 12),
        Held("B1", 7, day: 6, read: 10, expected: 11, noChange: 9, line: 12),
        Held("B1", 7, day: 13, read: 12, expected: 10, noChange: 9, line: null),
        Held("B2", 7, day: 6, read: 8, expected: 8.26, noChange: 9, line: null),
    ]);

    [Fact]
    public void A_row_for_each_lead_with_the_rivals_beside_it()
    {
        var rows = Render<LeadTable>(p => p.Add(x => x.ScoreAt, lead => Report.Block("B1", lead)).Add(x => x.Label, "x")).FindAll("tbody tr");
        Assert.Equal(["1 day", "1", "0.50", "1.00", "2.00", "+0.5", "100 %"], Cells(rows[0]));
        Assert.Equal(["3 days", "0", "–", "–", "–", "–", "–"], Cells(rows[1]));
        // Misses of +1 and −2; last reading off by 1 and 3; one line, off by 2; the miss of two lies outside.
        Assert.Equal(["7 days", "2", "1.50", "2.00", "2.00", "−0.5", "50 %"], Cells(rows[2]));
        Assert.Equal(4, rows.Count);
    }

    [Fact]
    public void Blocks_lead_to_their_own_section_the_poorly_known_first()
    {
        var rows = Render<BlockScores>(p => p.Add(x => x.Report, Report).Add(x => x.NameOf, code => code + " Name")).FindAll("tbody tr");
        Assert.Equal(["B1 Name", "2", "1.50", "2.00", "−0.5", "50 %"], Cells(rows[0]));
        Assert.Equal(["B2 Name", "1", "0.26", "1.00", "+0.3", "100 %"], Cells(rows[1]));
        Assert.Equal("/blocks/B1#accuracy", rows[0].QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public void A_blocks_sets_are_told_with_what_was_expected_the_latest_first()
    {
        var section = Block(new LookBack(LookBackPhase.Known, Report: Report));
        var rows = section.FindAll("[data-held] tbody tr");
        Assert.Equal(["13 Jan 2025", "leaf", "12.0", "10.0 (9.0–11.0)", "9.0", "no, drier"], Cells(rows[0]));
        Assert.Equal(["6 Jan 2025", "leaf", "10.0", "11.0 (10.0–12.0)", "9.0", "yes"], Cells(rows[1]));
        Assert.Contains("the outlook of B1 was off by 1.5 bar", section.Markup, StringComparison.Ordinal);
        Assert.Empty(section.FindAll("[data-look-back]"));
    }

    [Fact]
    public void While_it_is_worked_out_the_section_says_how_far_it_is_and_makes_up_nothing()
    {
        var section = Block(new LookBack(LookBackPhase.Working, new HindcastProgress(34, 120)));
        Assert.Contains("34 of 120 past mornings", section.Find("[data-look-back]").TextContent, StringComparison.Ordinal);
        Assert.Empty(section.FindAll("table"));
    }

    private IRenderedComponent<BlockAccuracy> Block(LookBack lookBack) => Render<BlockAccuracy>(p => p.Add(x => x.Code, "B1").Add(x => x.LookBack, lookBack));

    private static string[] Cells(IElement row) => [.. row.Children.Select(cell => cell.TextContent.Trim().Replace('\u00A0', ' '))];

    private static HeldAgainst Held(string block, int lead, int day, double read, double expected, double noChange, double? line) =>
        new(block, new DateOnly(2025, 1, day), WaterPotentialMeasure.Leaf, lead, read, 0, new TensionBand(expected - 1, expected, expected + 1), noChange, line);
}
