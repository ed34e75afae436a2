using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;
using EstateWater.Web.State;
using PlannedEstate = EstateWater.Tests.Planning.SmallEstate;

namespace EstateWater.Tests.Web.Week;

/// <summary>What a plan knows of sets that people were told of.</summary>
public sealed class ToldPlanTests
{
    private static readonly DateTimeOffset Now = PlannedEstate.AsOf;
    private static readonly PlanRequest Request = PlannedEstate.Request();

    [Fact]
    public void Sets_ahead_stand_in_order_of_time()
    {
        var told = Request.Told(Plan(Set(1, "V2", Now.AddHours(20), 4), Set(2, "V1", Now.AddHours(14), 6)), begun: []);
        Assert.Equal([new StandingSet("V1", Now.AddHours(14), 6), new StandingSet("V2", Now.AddHours(20), 4)], told.Standing);
        Assert.Equal(Request.Valves, told.Valves);
    }

    [Fact]
    public void A_set_that_has_begun_counts_as_run_until_somebody_says_otherwise()
    {
        var set = Set(1, "V1", Now.AddHours(-5), 6);
        var told = Request.Told(Plan(set), [set]);
        Assert.Empty(told.Standing);
        Assert.Equal(new AppliedSet(Now.AddHours(-5), 6, null), told.Valves[0].Applied[^1]);
        Assert.Equal(Request.Valves, Request.Told(Plan(set), begun: []).Valves);
    }

    // A list of metered water may tell of it as well as a confirmation; the quarter hour it began late changes nothing.
    [Theory]
    [InlineData(-5.25, 6, true)]
    [InlineData(-1, 2, true)]
    [InlineData(-9, 4, false)]
    public void A_set_that_the_record_tells_of_is_not_counted_twice(double startedHours, double hours, bool same)
    {
        var set = Set(1, "V1", Now.AddHours(-5), 6);
        var recorded = Request with
        {
            Valves = [.. Request.Valves.Select(v => v.Code != "V1" ? v : v with { Applied = [.. v.Applied, new AppliedSet(Now.AddHours(startedHours), hours, null)] })],
        };
        Assert.Equal(recorded.Valves[0].Applied.Count + (same ? 0 : 1), recorded.Told(Plan(set), [set]).Valves[0].Applied.Count);
    }

    [Fact]
    public void A_set_ahead_that_could_not_run_or_was_run_early_stands_no_more()
    {
        var (failed, early, asTold) = (Set(1, "V1", Now.AddHours(14), 6), Set(2, "V2", Now.AddHours(14), 6), Set(3, "V3", Now.AddHours(14), 6));
        Say(failed, startedAt: failed.Start, hours: 0, NotRunReason.PumpDown);
        Say(early, startedAt: Now.AddHours(-1), hours: 6);
        Say(asTold, startedAt: asTold.Start, hours: 6);
        Assert.Equal(["V3"], Request.Told(Plan(failed, early, asTold), begun: []).Standing.Select(s => s.ValveCode));
    }

    [Fact]
    public void Without_a_published_plan_nothing_is_told()
    {
        Assert.Empty(Request.Told(null, begun: []).Standing);
        Assert.Equal(Request.Valves, Request.Told(null, begun: []).Valves);
    }

    [Fact]
    public void A_plan_is_made_anew_when_a_set_begins_or_something_is_said_of_it()
    {
        var set = Set(1, "V1", Now.AddHours(14), 6);
        Assert.True(PlanInputs.AreSame(Plan(set), Now, Plan(set), Now.AddHours(1)));
        Assert.False(PlanInputs.AreSame(Plan(set), Now, Plan(set), Now.AddHours(15)));
        Assert.False(PlanInputs.AreSame(Plan(set), Now, null, Now));
        var said = Set(1, "V1", Now.AddHours(14), 6);
        Say(said, startedAt: said.Start, hours: 0, NotRunReason.NoPower);
        Assert.False(PlanInputs.AreSame(Plan(set), Now, Plan(said), Now));
    }

    private static PublishedPlan Plan(params PublishedSet[] sets) =>
        new() { Id = 1, AsOf = Now.AddDays(-1), PublishedAt = Now.AddDays(-1), PublishedBy = "Mara", PlanJson = "{}", Sets = [.. sets] };

    private static PublishedSet Set(int id, string valve, DateTimeOffset start, double hours) =>
        new() { Id = id, ValveCode = valve, SourceCode = "dam", Start = start, End = start.AddHours(hours), Hours = hours, FlowM3PerH = 20 };

    private static void Say(PublishedSet set, DateTimeOffset startedAt, double hours, NotRunReason? notRun = null) => set.Confirmations.Add(new SetConfirmation
    {
        EntryId = Guid.NewGuid(),
        SetId = set.Id,
        StartedAt = startedAt,
        Hours = hours,
        NotRun = notRun,
        ConfirmedBy = "Ben",
        EnteredAt = Now,
        ReceivedAt = Now,
    });
}
