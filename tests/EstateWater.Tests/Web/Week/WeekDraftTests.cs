using EstateWater.Web.Features.Week;
using Microsoft.Extensions.Time.Testing;
using WeekPlan = EstateWater.Planning.Plan;

namespace EstateWater.Tests.Web.Week;

public sealed class WeekDraftTests
{
    private readonly FakeTimeProvider clock = new();

    [Fact]
    public async Task A_change_is_planned_with_the_hours_given()
    {
        using var draft = Draft();
        await Now(draft.SetAsync("B01", 8));
        Assert.Equal(8, draft.Plan.Blocks[0].Hours);
        Assert.Equal(8, draft.Edits.HoursByHand["B01"]);
        Assert.False(draft.IsComputing);
    }

    [Fact]
    public async Task A_later_change_takes_the_place_of_one_that_is_being_planned()
    {
        var computed = new List<double>();
        using var draft = new WeekDraft(
            (edits, _) =>
            {
                computed.Add(edits.HoursByHand["B01"]);
                return Answer(edits);
            },
            Samples.Plan(),
            Alone,
            clock);
        var first = draft.SetAsync("B01", 7);
        var second = draft.SetAsync("B01", 9);
        await Now(Task.WhenAll(first, second));
        Assert.Equal([9], computed);
        Assert.Equal(9, draft.Plan.Blocks[0].Hours);
    }

    [Fact]
    public async Task A_plan_overtaken_while_computing_is_cancelled_and_never_shown()
    {
        using var begun = new SemaphoreSlim(0);
        var cancelled = false;
        using var draft = new WeekDraft(
            (edits, cancellation) =>
            {
                if (edits.HoursByHand["B01"] == 7)
                {
                    begun.Release();
                    cancelled = cancellation.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
                }

                return Answer(edits);
            },
            Samples.Plan(),
            Alone,
            clock);
        var first = draft.SetAsync("B01", 7);
        clock.Advance(WeekDraft.Pause);
        await begun.WaitAsync(TestContext.Current.CancellationToken);
        await Now(draft.SetAsync("B01", 9));
        await first;
        Assert.True(cancelled);
        Assert.Equal(9, draft.Plan.Blocks[0].Hours);
    }

    [Fact]
    public async Task Undo_takes_back_one_change_after_the_other()
    {
        using var draft = Draft();
        await Now(draft.SetAsync("B01", 8));
        await Now(draft.SetAsync("B01", 9));
        await Now(draft.GiveBackAsync("B01"));
        Assert.Equal("the hours of B01", draft.UndoWhat);

        await Now(draft.UndoAsync());
        Assert.Equal(9, draft.Edits.HoursByHand["B01"]);
        await Now(draft.UndoAsync());
        Assert.Equal(8, draft.Edits.HoursByHand["B01"]);
        await Now(draft.UndoAsync());
        Assert.Empty(draft.Edits.HoursByHand);
        Assert.Equal(6, draft.Plan.Blocks[0].Hours);
        Assert.Null(draft.UndoWhat);
    }

    [Fact]
    public async Task Hours_that_the_planner_refuses_leave_the_plan_and_say_why()
    {
        using var draft = new WeekDraft((_, _) => throw new ArgumentOutOfRangeException("hours", "Hours must fit the nights."), Samples.Plan(), Alone, clock);
        await Now(draft.SetAsync("B01", 8));
        Assert.Equal(6, draft.Plan.Blocks[0].Hours);
        Assert.Contains("Hours must fit the nights.", draft.Problem);
    }

    [Fact]
    public async Task Newer_knowledge_is_planned_with_the_hours_fixed_so_far()
    {
        using var draft = Draft();
        await Now(draft.SetAsync("B01", 8));
        await Now(draft.RebaseAsync((edits, _) => Samples.Plan(edits.HoursByHand["B01"], 5), Samples.Plan(1, 5)));
        Assert.Equal([8, 5], draft.Plan.Blocks.Select(b => b.Hours));
    }

    [Fact]
    public async Task Newer_knowledge_without_hours_by_hand_is_shown_as_it_came()
    {
        using var draft = new WeekDraft((_, _) => throw new InvalidOperationException("nothing to compute"), Samples.Plan(), Alone, clock);
        await draft.RebaseAsync((_, _) => throw new InvalidOperationException("nothing to compute"), Samples.Plan(1, 5));
        Assert.Equal([1, 5], draft.Plan.Blocks.Select(b => b.Hours));
    }

    [Fact]
    public async Task The_last_hours_given_on_a_valve_count_for_all_its_blocks()
    {
        using var draft = new WeekDraft((edits, _) => Answer(edits), Samples.Plan(), block => block == "B01" ? ["B02"] : ["B01"], clock);
        await Now(draft.SetAsync("B01", 8));
        await Now(draft.SetAsync("B02", 3));
        Assert.Equal(new Dictionary<string, double> { ["B02"] = 3 }, draft.Edits.HoursByHand);
        await Now(draft.UndoAsync());
        Assert.Equal(new Dictionary<string, double> { ["B01"] = 8 }, draft.Edits.HoursByHand);
    }

    [Fact]
    public async Task What_follows_is_told_against_the_planners_own_plan_as_long_as_something_is_changed()
    {
        using var draft = Draft();
        Assert.Null(draft.Consequences);
        await Now(draft.SetAsync("B01", 8));
        await Now(draft.SetAsync("B01", 9));
        var block = Assert.Single(draft.Consequences!.Blocks);
        Assert.Equal(("B01", 6, 9), (block.Block, block.Before.Hours, block.After.Hours));
        Assert.Equal(90, draft.Consequences.M3More);
        await Now(draft.GiveBackAsync("B01"));
        Assert.Null(draft.Consequences);
    }

    [Fact]
    public async Task Kept_changes_are_restored_once_and_never_over_later_ones()
    {
        using var draft = Draft();
        var kept = WeekEdits.None.WithHours("B01", 8, []);
        await Now(draft.RestoreAsync(kept));
        Assert.Equal(8, draft.Plan.Blocks[0].Hours);
        await Now(draft.SetAsync("B01", 9));
        await draft.RestoreAsync(kept);
        Assert.Equal(9, draft.Edits.HoursByHand["B01"]);
    }

    private static IReadOnlyList<string> Alone(string block) => [];

    private static WeekPlan Answer(WeekEdits edits) =>
        Samples.Plan(edits.HoursByHand.TryGetValue("B01", out var first) ? first : 6);

    private WeekDraft Draft() => new((edits, _) => Answer(edits), Samples.Plan(), Alone, clock);

    private async Task Now(Task change)
    {
        clock.Advance(WeekDraft.Pause);
        await change;
    }
}
