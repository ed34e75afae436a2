using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Tests.Planning.WhatIf;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Week;

/// <summary>Dragging on a planned estate: the sources' nights last from 20:00 to 08:00.</summary>
public sealed class SetDragTests : IClassFixture<TwoSourceEstate>, IDisposable
{
    private readonly TwoSourceEstate estate;
    private readonly WeekDraft draft;
    private readonly ChangeDesk desk;
    private readonly SetDrag drag;
    private readonly PlannedSet set;

    public SetDragTests(TwoSourceEstate estate)
    {
        this.estate = estate;
        draft = new WeekDraft(
            (edits, cancellation) => Planner.Plan(estate.Fitted, estate.Request with { HoursByHand = edits.HoursByHand, Changes = edits.Changes }, cancellation),
            estate.First,
            _ => [],
            new FakeTimeProvider());
        desk = new ChangeDesk(estate.Fitted, draft);
        drag = new SetDrag(desk, UnitChoice.Metric);
        set = estate.First.Sets.MinBy(s => s.Hours)!;
    }

    [Fact]
    public async Task A_dragged_set_is_the_change_that_the_form_makes_and_is_undone_alike()
    {
        // 02:15 is 25 quarter hours after 20:00, on the morning after the night's day.
        var night = Free();
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(set), false, new BoardPlace(set.Source, night, 25)));
        var (dragged, what) = (draft.Edits, draft.UndoWhat);
        await draft.UndoAsync();
        Assert.True(draft.Edits.IsEmpty);
        Assert.Empty(await desk.MoveAsync(set, night, new TimeOnly(2, 15), set.Hours));
        Assert.Equal(draft.Edits.Changes, dragged.Changes);
        Assert.Equal((draft.UndoWhat, $"the move of {set.Valve}"), (what, what));
        Assert.Contains(draft.Plan.Sets, s => s.Valve == set.Valve && s.Start.DateTime == night.AddDays(1).ToDateTime(new TimeOnly(2, 15)) && s.Hours == set.Hours);
    }

    [Fact]
    public async Task A_dragged_end_changes_the_hours_and_never_below_a_quarter_hour()
    {
        // Nothing ends before it began.
        var night = desk.NightOf(set);
        Assert.Contains(", 0.25 h", drag.Weigh(SetRows.IdOf(set), true, new BoardPlace(set.Source, night, 0)).Words[0], StringComparison.Ordinal);
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(set), true, new BoardPlace(set.Source, night, QuarterOf(set) + 7)));
        Assert.Contains(new SetPinned(set.Valve, set.Start, 1.75) { Was = new SetPlace(set.Start, set.Hours) }, draft.Edits.Changes);
    }

    [Fact]
    public async Task A_dragged_set_is_told_as_one_move_from_where_it_stood_first_whatever_else_its_valve_has()
    {
        // Short enough to begin an hour after the window opens.
        var many = estate.First.Sets.GroupBy(s => s.Valve).First(g => g.Count() > 1 && g.Any(s => s.Hours <= 11)).ToList();
        var first = many.First(s => s.Hours <= 11);
        var free = desk.NightsOf(first.Source).Where(n => many.All(s => desk.NightOf(s) != n)).ToList();
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(first), false, new BoardPlace(first.Source, free[0], 0)));
        var moved = draft.Plan.Sets.Single(s => s.Valve == first.Valve && desk.NightOf(s) == free[0]);
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(moved), false, new BoardPlace(first.Source, free[^1], 4)));

        // Four quarter hours after 20:00.
        var words = $"{first.Valve} moves from {first.Start:ddd d MMM HH:mm} to {free[^1]:ddd d MMM} 21:00";
        Assert.Equal([words], ChangeLine.Of(draft.Edits, UnitChoice.Metric).Select(l => l.Words));
        Assert.Equal([words], draft.Plan.ChangesByHand);
    }

    [Fact]
    public async Task A_set_put_back_where_it_stood_was_not_moved()
    {
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(set), false, new BoardPlace(set.Source, Free(), 0)));
        var moved = draft.Plan.Sets.Single(s => s.Valve == set.Valve && desk.NightOf(s) == Free());
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(moved), false, new BoardPlace(set.Source, desk.NightOf(set), QuarterOf(set))));
        Assert.All(draft.Edits.Changes, c => Assert.Null(((SetPinned)c).Was));
    }

    [Fact]
    public void A_place_is_told_in_words_before_the_set_is_let_go()
    {
        var answer = drag.Weigh(SetRows.IdOf(set), false, new BoardPlace(set.Source, Free(), 0));
        Assert.True(answer.Stands);
        var opens = Free().ToDateTime(new TimeOnly(20, 0));
        Assert.StartsWith($"{set.Valve}: {opens:ddd d MMM} 20:00 to {opens.AddHours(set.Hours):HH:mm}, {set.Hours:0.##} h", answer.Words[0], StringComparison.Ordinal);
        Assert.True(draft.Edits.IsEmpty);
    }

    // Each valve draws more than half of 34 m³/h.
    [Fact]
    public async Task Sets_that_give_way_are_told_and_placed_ones_are_in_the_way()
    {
        var other = estate.First.Sets.Where(s => s.Source == set.Source && s.Valve != set.Valve).MaxBy(s => s.Hours)!;
        var there = new BoardPlace(set.Source, desk.NightOf(other), QuarterOf(other));
        var answer = drag.Weigh(SetRows.IdOf(set), false, there);
        Assert.True(answer.Stands);
        Assert.Equal($"With the sets there {UnitChoice.Metric.Flow(set.FlowM3PerH + other.FlowM3PerH)} of {UnitChoice.Metric.Flow(34)}: the planner moves others.", answer.Words[1]);

        Assert.Empty(await desk.MoveAsync(other, new SetPinned(other.Valve, other.Start, other.Hours)));
        var another = draft.Plan.Sets.First(s => s.Source == set.Source && s.Valve != other.Valve);
        answer = drag.Weigh(SetRows.IdOf(another), false, there);
        Assert.False(answer.Stands);
        Assert.Matches($"^Not here\\. .* together ask for .*; {set.Source} gives 34\\.$", answer.Words[0]);
    }

    [Fact]
    public async Task A_closed_valve_is_in_the_way_while_the_set_hangs_there()
    {
        var night = Free();
        await desk.CloseAsync(set.Valve, night, night);
        var now = draft.Plan.Sets.First(s => s.Valve == set.Valve);
        var answer = drag.Weigh(SetRows.IdOf(now), false, new BoardPlace(now.Source, night, 0));
        Assert.False(answer.Stands);
        Assert.EndsWith($", but {set.Valve} closed on the night of {night:ddd d MMM}.", answer.Words[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_is_refused_and_nothing_is_changed()
    {
        var elsewhere = desk.Sources.First(s => s != set.Source);
        var (id, night) = (SetRows.IdOf(set), Free());
        Assert.Equal($"{set.Valve} is on {set.Source}: it cannot run on {elsewhere}.", Assert.Single(await drag.DropAsync(id, false, new BoardPlace(elsewhere, night, 0))).ToString());
        Assert.Equal($"Not here. {set.Valve} is on {set.Source}: it cannot run on {elsewhere}.", drag.Weigh(id, false, new BoardPlace(elsewhere, night, 0)).Words[0]);
        Assert.Contains("outside the hours of", Assert.Single(await drag.DropAsync(id, false, new BoardPlace(set.Source, night.AddDays(60), 0))).ToString(), StringComparison.Ordinal);
        Assert.Equal("This set is no longer planned.", Assert.Single(await drag.DropAsync("set-V99-202601010000", false, new BoardPlace(set.Source, night, 0))).ToString());
        Assert.True(draft.Edits.IsEmpty);
        Assert.Null(draft.UndoWhat);
    }

    [Fact]
    public async Task A_set_let_go_where_it_stood_changes_nothing()
    {
        Assert.Empty(await drag.DropAsync(SetRows.IdOf(set), false, new BoardPlace(set.Source, desk.NightOf(set), QuarterOf(set))));
        Assert.Null(draft.UndoWhat);
    }

    [Fact]
    public void A_night_that_is_open_already_counts_from_when_a_set_may_run()
    {
        // At 06:00 with two hours' notice a set may run from 08:00 on; 08:40 on the board is nearest to 08:45.
        var request = TwoSourceEstate.Of(blocks: 2, maxFlowM3PerH: 60);
        request = request with { Sources = [.. request.Sources.Select(s => s with { DailyFrom = new TimeOnly(6, 10), DailyTo = new TimeOnly(6, 10) })] };
        var today = DateOnly.FromDateTime(request.AsOf.DateTime);
        Assert.Equal(6, request.AsOf.Hour);
        var open = new ChangeDesk(Planner.Fit(request, TestContext.Current.CancellationToken), draft);
        Assert.Equal(today.ToDateTime(new TimeOnly(8, 45)), open.MomentOf(new BoardPlace("dam", today, 10)).DateTime);
    }

    public void Dispose() => draft.Dispose();

    // After 20:00, when the nights open.
    private int QuarterOf(PlannedSet one) => (int)((one.Start.DateTime - desk.NightOf(one).ToDateTime(new TimeOnly(20, 0))).TotalMinutes / 15);

    // A night on which the set's valve does not open.
    private DateOnly Free() => desk.NightsOf(set.Source).Last(n => estate.First.Sets.All(s => s.Valve != set.Valve || desk.NightOf(s) != n));
}
