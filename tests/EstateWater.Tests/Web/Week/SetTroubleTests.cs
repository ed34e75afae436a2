using Bunit;
using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Tests.Planning.WhatIf;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Week;

/// <summary>What went wrong is the first thing the manager reads, and one press plans without it.</summary>
public sealed class SetTroubleTests : BunitContext, IClassFixture<TwoSourceEstate>
{
    private static readonly DateTimeOffset Published = new(2026, 1, 19, 18, 0, 0, TimeSpan.FromHours(2));

    private static readonly DateOnly Today = new(2026, 1, 20);

    private readonly TwoSourceEstate estate;
    private readonly WeekDraft draft;

    public SetTroubleTests(TwoSourceEstate estate)
    {
        this.estate = estate;
        draft = new WeekDraft(
            (edits, cancellation) => Planner.Plan(estate.Fitted, estate.Request with { HoursByHand = edits.HoursByHand, Changes = edits.Changes }, cancellation),
            estate.First,
            _ => [],
            new FakeTimeProvider());
    }

    [Fact]
    public void A_pump_that_was_down_is_told_with_who_and_when_and_its_source() => Assert.Equal(
        [new SetTrouble("V6 could not run: pump down (Ben, Tue 20 Jan 04:47).", "dam", null)],
        Of(Set("V6", Could(NotRunReason.PumpDown))));

    [Fact]
    public void Sets_that_one_pump_failed_are_one_and_tell_the_newest_entry() => Assert.Equal(
        [new SetTrouble("V6, V8 could not run: pump down (Ben, Tue 20 Jan 05:47).", "dam", null), new SetTrouble("V2 could not run: pump down (Ben, Tue 20 Jan 04:47).", "bore", null)],
        Of(Set("V6", Could(NotRunReason.PumpDown)), Set("V8", Could(NotRunReason.PumpDown, hoursLater: 1)), Set("V2", Could(NotRunReason.PumpDown), "bore")));

    [Fact]
    public void A_broken_valve_and_a_burst_pipe_are_their_valves_alone() => Assert.Equal(
        [("V1", null), ("V3", null)],
        Of(Set("V1", Could(NotRunReason.ValveBroken)), Set("V3", Could(NotRunReason.PipeBurst))).Select(t => (t.Valve, t.Source)));

    [Fact]
    public void Another_reason_is_told_in_the_irrigators_words_and_blames_nothing() => Assert.Equal(
        [new SetTrouble("V1 could not run: “gate locked” (Ben, Tue 20 Jan 04:47).", null, null)],
        Of(Set("V1", Could(NotRunReason.Other) with { Note = "gate locked" })));

    [Theory]
    [InlineData(0.01, "V1 ran 0.01 h of 13 h (Ben, Tue 20 Jan 04:47).")]
    [InlineData(6.25, "V1 ran 6.25 h of 13 h (Ben, Tue 20 Jan 04:47).")]
    [InlineData(6.5, null)]
    [InlineData(14, null)]
    public void A_set_that_ran_less_than_half_is_told(double hours, string? words) =>
        Assert.Equal(words, Of(Set("V1", Could(null) with { Hours = hours })).SingleOrDefault()?.What);

    [Fact]
    public void A_phone_whose_clock_runs_ahead_is_told_by_the_servers() => Assert.Equal(
        "V6 could not run: pump down (Ben, Tue 20 Jan 06:00).", Assert.Single(Of(Set("V6", Could(NotRunReason.PumpDown, hoursLater: 48)))).What);

    [Fact]
    public void What_came_in_before_the_last_plan_was_known_to_it() =>
        Assert.Empty(Of(Set("V6", Could(NotRunReason.PumpDown) with { ReceivedAt = Published.AddMinutes(-1) }), Set("V7", null)));

    [Fact]
    public async Task One_press_plans_three_nights_without_the_source_and_another_takes_that_back()
    {
        var brief = Brief(Of(Set("V6", Could(NotRunReason.PumpDown))));
        Assert.StartsWith("V6 could not run: pump down (Ben, Tue 20 Jan 04:47).", brief.Find("section > :nth-child(2) > li").TextContent.Trim(), StringComparison.Ordinal);
        Assert.Equal("Try three nights without dam", brief.Find(".trouble button").TextContent.Trim());
        await brief.Find(".trouble button").ClickAsync(new());
        Assert.Equal([new SourceOut("dam", Today, Today.AddDays(2))], draft.Edits.Changes);
        Assert.DoesNotContain(draft.Plan.Sets, s => s.Source == "dam" && PlanLimits.NightOf(s) <= Today.AddDays(2));
        brief.Render(p => p.Add(b => b.Edits, draft.Edits));
        Assert.Equal("Take back: dam out", brief.Find(".trouble button").TextContent.Trim());
        await brief.Find(".trouble button").ClickAsync(new());
        Assert.Empty(draft.Edits.Changes);
    }

    [Fact]
    public async Task One_press_closes_the_valve_that_is_to_blame()
    {
        await Brief(Of(Set("V4", Could(NotRunReason.PipeBurst)))).Find(".trouble button").ClickAsync(new());
        Assert.Equal([new ValveClosed("V4", Today, Today.AddDays(2))], draft.Edits.Changes);
    }

    [Fact]
    public void Where_nothing_is_to_blame_there_is_nothing_to_press() =>
        Assert.Empty(Brief(Of(Set("V1", Could(null) with { Hours = 1 }))).FindAll(".trouble button"));

    [Fact]
    public async Task A_press_that_contradicts_another_change_is_refused_in_words()
    {
        var set = estate.First.Sets.First(s => s.Source == "dam" && PlanLimits.NightOf(s) <= Today.AddDays(2));
        await draft.ApplyAsync(WeekEdits.None.WithSets(set.Valve, [new SetPinned(set.Valve, set.Start, set.Hours)], []), "a set");
        var brief = Brief(Of(Set("V6", Could(NotRunReason.NoPower))));
        await brief.Find(".trouble button").ClickAsync(new());
        Assert.StartsWith("Not changed.", brief.Find(".trouble [role=alert] p").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(draft.Edits.Changes, c => c is SourceOut);
    }

    protected override void Dispose(bool disposing)
    {
        draft.Dispose();
        base.Dispose(disposing);
    }

    private IRenderedComponent<MondayBrief> Brief(IReadOnlyList<SetTrouble> troubles) => Render<MondayBrief>(p => p
        .Add(b => b.Troubles, troubles)
        .Add(b => b.Chores, [])
        .Add(b => b.Edits, draft.Edits)
        .Add(b => b.Desk, new ChangeDesk(estate.Fitted, draft))
        .Add(b => b.Difference, new PlanDifference([], 0, 0))
        .Add(b => b.Zone, Samples.Zone));

    private static IReadOnlyList<SetTrouble> Of(params SetLine[] lines) =>
        SetTrouble.SinceLastPlan(new StandingSets { Lines = lines, PublishedAt = Published, Now = Published.AddHours(12) }, UnitChoice.Metric);

    // At a quarter to five on the morning after the night.
    private static ConfirmedHours Could(NotRunReason? not, int hoursLater = 0) => new(0, null, "Ben", null, Published.AddHours(hoursLater).AddMinutes(647))
    {
        NotRun = not,
        ReceivedAt = Published.AddHours(12),
    };

    private static SetLine Set(string valve, ConfirmedHours? said, string source = "dam") => new()
    {
        SetId = 1,
        Valve = valve,
        Source = source,
        Blocks = [],
        Start = Published.AddHours(2),
        End = Published.AddHours(15),
        Hours = 13,
        FlowM3PerH = 20,
        Night = Today.AddDays(-1),
        Confirmed = said,
    };
}
