using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Owner;
using EstateWater.Web.Features.Plan;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.Owner;

/// <summary>The owner's headline judges what was published, with the real planner.</summary>
public sealed class VerdictTests(PlannedEstate estate) : IClassFixture<PlannedEstate>
{
    private static readonly DateTimeOffset Tonight = SmallEstate.AsOf.AddHours(14);

    [Fact]
    public void What_is_advised_and_not_published_is_called_so()
    {
        var verdict = Verdict.From(estate.Snapshot, UnitChoice.Metric);
        Assert.Contains("the plan advised, which is not published", verdict.Answer.Sentence, StringComparison.Ordinal);
        Assert.Null(verdict.NewerAdvice);
    }

    [Fact]
    public void Advice_published_as_it_is_is_judged_without_another_plan()
    {
        var snapshot = estate.With([.. estate.Snapshot.Plan.Sets.Select(set => Set(set.Valve, set.Start, set.Hours, set.FlowM3PerH))]);
        Assert.Same(snapshot.Plan, PublishedAhead.Of(snapshot).Plan);
        Assert.Null(Verdict.From(snapshot, UnitChoice.Metric).NewerAdvice);
    }

    [Fact]
    public void The_headline_judges_what_was_published_and_newer_advice_is_said_in_a_sentence()
    {
        var snapshot = estate.With([]);
        var decided = PublishedAhead.Of(snapshot).Plan!;
        Assert.Empty(decided.Sets);
        Assert.All(decided.Blocks, block => Assert.All(block.Outlook, day => Assert.Equal(day.UnwateredBar, day.PlannedBar)));
        var verdict = Verdict.From(snapshot, UnitChoice.Metric);
        // No water was published: it is as without water, and the hot days ahead take a block past its ceiling.
        Assert.EndsWith("even with the published plan; without water, as many.", verdict.Answer.Sentence, StringComparison.Ordinal);
        Assert.Matches(@"^Newer advice is not published yet: \d+ sets? added, .* h more; .*\.$", verdict.NewerAdvice);
    }

    [Fact]
    public void A_valve_without_a_published_set_gets_no_water()
    {
        var decided = PublishedAhead.Of(estate.With([Set("V1", Tonight, 6)])).Plan!;
        Assert.Equal(("V1", Tonight, 6.0), Assert.Single(decided.Sets.Select(set => (set.Valve, set.Start, set.Hours))));
        Assert.Equal([6.0, 0.0], decided.Blocks.OrderBy(block => block.Block, StringComparer.Ordinal).Select(block => block.Hours));
    }

    [Fact]
    public void What_was_confirmed_counts_as_it_was_done()
    {
        var (stopped, failed) = (Set("V1", Tonight, 6), Set("V2", Tonight, 6));
        Say(stopped, 2.6);
        Say(failed, 0);
        var decided = PublishedAhead.Of(estate.With([stopped, failed])).Plan!;
        // Sets are planned in quarter hours.
        Assert.Equal(("V1", 2.5), Assert.Single(decided.Sets.Select(set => (set.Valve, set.Hours))));
    }

    [Fact]
    public void A_set_that_runs_is_water_given_and_none_ahead()
    {
        // The dam's window closes at 06:00, the clock's moment; one that never closes goes on.
        var snapshot = PlannedEstate.AlwaysOpen([Set("V1", SmallEstate.AsOf.AddHours(-3), 13)]);
        Assert.Empty(PublishedAhead.Of(snapshot).Plan!.Sets);
    }

    [Fact]
    public void A_plan_that_can_no_longer_be_kept_is_said_and_the_advice_judged()
    {
        var verdict = Verdict.From(estate.With([Set("V9", Tonight, 6)]), UnitChoice.Metric);
        Assert.Equal("The published plan can no longer be kept: There is no valve V9.", verdict.NewerAdvice);
        Assert.Contains("which is not published", verdict.Answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_whose_sets_are_over_decides_nothing_ahead() =>
        Assert.Null(PublishedAhead.Of(estate.With([Set("V1", Tonight.AddDays(-2), 6)])).Plan);

    private static PublishedSet Set(string valve, DateTimeOffset start, double hours, double flow = 20) =>
        new() { ValveCode = valve, SourceCode = "dam", Start = start, End = start.AddHours(hours), Hours = hours, FlowM3PerH = flow };

    private static void Say(PublishedSet set, double hours) => set.Confirmations.Add(new SetConfirmation
    {
        EntryId = Guid.NewGuid(),
        SetId = 0,
        StartedAt = set.Start,
        Hours = hours,
        ConfirmedBy = "Ben",
        EnteredAt = set.End,
        ReceivedAt = set.End,
    });
}

/// <summary>The stored estate with its real plan, made once, on a dam that gives enough for its valves.</summary>
public sealed class PlannedEstate
{
    internal EstateSnapshot Snapshot { get; } = Of(Dam(new(20, 0), new(6, 0)));

    internal EstateSnapshot With(List<PublishedSet> sets) => Snapshot with { Published = Plan(sets) };

    internal static EstateSnapshot AlwaysOpen(List<PublishedSet> sets) => Of(Dam(new(0, 0), new(0, 0))) with { Published = Plan(sets) };

    private static EstateContents Dam(TimeOnly from, TimeOnly to) => StoredEstate.Contents with
    {
        Sources = [new WaterSource { Code = "dam", MaxFlowM3PerH = 500, DailyFrom = from, DailyTo = to, SeasonAllocationM3 = 100_000 }],
    };

    private static EstateSnapshot Of(EstateContents contents)
    {
        var fitted = Planner.Fit(PlanRequests.From(contents, SmallEstate.AsOf));
        return new EstateSnapshot { Contents = contents, Plan = Planner.Plan(fitted, fitted.Request), Fitted = fitted, Version = 1 };
    }

    private static PublishedPlan Plan(List<PublishedSet> sets) =>
        new() { AsOf = SmallEstate.AsOf, PublishedAt = SmallEstate.AsOf, PublishedBy = "Ana", PlanJson = "{}", Sets = sets };
}
