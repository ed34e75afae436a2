using Bunit;
using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class DraftChangesTests : BunitContext
{
    private static readonly PlanConsequences Following = new()
    {
        Blocks = [new BlockConsequence("B04", new BlockStanding(6, 180, 0, 0.1, 0, null, 13.5), new BlockStanding(0, 0, 6, 0.7, 2, new DateOnly(2026, 1, 22), 14.6))],
        Sources = [new SourceConsequence("bore", new SourceWater("bore", 500, 40_000), new SourceWater("bore", 320, 40_180))],
        HoursMore = -6,
        M3More = -180,
    };

    private readonly List<ChangeLine> taken = [];

    [Fact]
    public void Nothing_is_shown_where_nothing_is_changed() => Assert.Empty(Changes(WeekEdits.None, null).Markup.Trim());

    [Fact]
    public void The_sentence_comes_first_and_the_table_shows_what_was_beside_what_is()
    {
        var shown = Changes(WeekEdits.None.WithHours("B04", 0, []), Following);
        Assert.Equal("If B04 gets 0 h, one block passes its ceiling: B04 on Thu 22 Jan; 180 m³ less is used.", shown.Find("[role=status]").TextContent);
        Assert.Equal(
            ["B04", "70 % was 10 %", "2 was 0", "14.6 was 13.5", "0 h was 6 h", "0 m³ was 180 m³", "6 h was 0 h"],
            shown.FindAll(".consequences tbody tr")[0].Children.Select(c => string.Join(' ', c.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace('\u00A0', ' ')));
        Assert.Contains("bore gives 320 m³, was 500 m³; 40\u202F180 m³ of its season's water are left after it.", shown.Markup);
    }

    [Fact]
    public void Each_change_is_taken_back_by_its_own_button()
    {
        var edits = WeekEdits.None.WithHours("B04", 0, []).With(new SourceOut("bore", new DateOnly(2026, 1, 20), new DateOnly(2026, 1, 22)));
        Changes(edits, null).Find("button[aria-label^='Take back: bore out']").Click();
        Assert.Equal(["B04 gets 0 h"], ChangeLine.Of(Assert.Single(taken).Without, UnitChoice.Metric).Select(l => l.Words));
    }

    [Fact]
    public void Who_publishes_reads_what_was_changed()
    {
        var plan = Samples.Plan() with { ChangesByHand = ["B04 gets 0 h", "bore out on the night of Tue 20 Jan"] };
        IRenderedComponent<PublishReview> Review(EstateWater.Planning.Plan of) => Render<PublishReview>(p => p.Add(r => r.Plan, of).Add(r => r.Zone, Samples.Zone));
        Assert.Contains("Changed by hand, and kept with the plan: B04 gets 0 h; bore out on the night of Tue 20 Jan.", Review(plan).Markup);
        Assert.DoesNotContain("Changed by hand", Review(Samples.Plan()).Markup);
    }

    private IRenderedComponent<DraftChanges> Changes(WeekEdits edits, PlanConsequences? consequences) => Render<DraftChanges>(p => p
        .Add(c => c.Edits, edits)
        .Add(c => c.Consequences, consequences)
        .Add(c => c.OnTakeBack, taken.Add));
}
