using Bunit;
using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Tests.Planning.WhatIf;
using EstateWater.Web.Features.Week;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Week;

/// <summary>The forms on a planned estate: what they ask for is what is planned, and what cannot be is said.</summary>
public sealed class TryChangeTests : BunitContext, IClassFixture<TwoSourceEstate>
{
    private static readonly DateOnly Today = new(2026, 1, 20);

    private readonly TwoSourceEstate estate;
    private readonly FakeTimeProvider clock = new();
    private readonly WeekDraft draft;
    private readonly IRenderedComponent<TryChange> forms;

    public TryChangeTests(TwoSourceEstate estate)
    {
        this.estate = estate;
        draft = new WeekDraft(
            (edits, cancellation) => Planner.Plan(estate.Fitted, estate.Request with { HoursByHand = edits.HoursByHand, Changes = edits.Changes }, cancellation),
            estate.First,
            _ => [],
            clock);
        forms = Render<TryChange>(p => p.Add(t => t.Desk, new ChangeDesk(estate.Fitted, draft)));
    }

    [Fact]
    public async Task A_valve_is_closed_from_one_night_through_another()
    {
        forms.Find("#close-valve").Change("V4");
        forms.Find("#close-from").Change("2026-01-21");
        forms.Find("#close-to").Change("2026-01-23");
        await SubmitAsync("Close a valve");
        Assert.Equal([new ValveClosed("V4", new DateOnly(2026, 1, 21), new DateOnly(2026, 1, 23))], draft.Edits.Changes);
        Assert.DoesNotContain(draft.Plan.Sets, s => s.Valve == "V4" && PlanLimits.NightOf(s) >= new DateOnly(2026, 1, 21) && PlanLimits.NightOf(s) <= new DateOnly(2026, 1, 23));
        Assert.Equal("the closing of V4", draft.UndoWhat);
    }

    [Fact]
    public async Task A_source_is_taken_out_for_three_nights_unless_said_otherwise()
    {
        forms.Find("#out-source").Change("dam");
        forms.Find("#out-from").Change("2026-01-22");
        await SubmitAsync("Take a pump or source out");
        Assert.Equal([new SourceOut("dam", new DateOnly(2026, 1, 22), new DateOnly(2026, 1, 24))], draft.Edits.Changes);
    }

    [Fact]
    public async Task A_set_is_moved_and_the_other_sets_of_its_valve_stay()
    {
        var valve = estate.First.Sets.GroupBy(s => s.Valve).First(g => g.Count() > 1).ToList();
        var free = Enumerable.Range(7, 3).Select(Today.AddDays).First(d => valve.All(s => PlanLimits.NightOf(s) != d));
        forms.Find("#move-set").Change(SetRows.IdOf(valve[0]));
        forms.Find("#move-night").Change($"{free:yyyy-MM-dd}");
        forms.Find("#move-opens").Change("02:15:00");
        forms.Find("#move-hours").Change("3,5");
        await SubmitAsync("Move a set");
        var planned = draft.Plan.Sets.Where(s => s.Valve == valve[0].Valve).ToList();
        Assert.Equal(valve.Skip(1).Select(s => (s.Start, s.Hours)), planned.SkipLast(1).Select(s => (s.Start, s.Hours)));

        // A quarter past two belongs to the night that opened the evening before.
        Assert.Equal(free.AddDays(1).ToDateTime(new TimeOnly(2, 15)), planned[^1].Start.DateTime);
        Assert.Equal(3.5, planned[^1].Hours);
    }

    [Fact]
    public async Task What_cannot_be_is_said_beside_the_form_and_nothing_is_changed()
    {
        forms.Find("#move-opens").Change("18:00:00");
        await SubmitAsync("Move a set");
        Assert.StartsWith("Not changed.", forms.WaitForElement("[role=alert] p").TextContent, StringComparison.Ordinal);
        Assert.Contains("outside the hours of", forms.Find("[role=alert]").TextContent);
        Assert.True(draft.Edits.IsEmpty);
        forms.Find("#move-hours").Change("plenty");
        await SubmitAsync("Move a set");
        forms.WaitForAssertion(() => Assert.Equal("Not changed. Hours must be between 0 and 24, like 6.5.", forms.Find("[role=alert] p").TextContent));
    }

    [Fact]
    public async Task A_clock_time_half_typed_is_left_alone_and_asked_for_with_whatever_else_is_wrong()
    {
        forms.Find("#move-opens").Change("");
        Assert.Equal("", forms.Find("#move-opens").GetAttribute("value"));
        forms.Find("#move-hours").Change("plenty");
        await SubmitAsync("Move a set");
        forms.WaitForAssertion(() => Assert.Equal(
            ["Not changed. A set opens at a clock time, like 21:30.", "Not changed. Hours must be between 0 and 24, like 6.5."],
            forms.FindAll("[role=alert] p").Select(p => p.TextContent)));
        Assert.True(draft.Edits.IsEmpty);
    }

    [Fact]
    public void Every_field_has_a_name() => Assert.All(
        forms.FindAll("select, input"), field => Assert.NotNull(forms.Find($"label[for={field.Id}]")));

    protected override void Dispose(bool disposing)
    {
        draft.Dispose();
        base.Dispose(disposing);
    }

    private async Task SubmitAsync(string form)
    {
        var done = forms.Find($"form[aria-label='{form}']").SubmitAsync();
        clock.Advance(WeekDraft.Pause);
        await done;
    }
}
