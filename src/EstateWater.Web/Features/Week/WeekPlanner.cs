using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Week;

/// <summary>What the week page asks of the planner and the store.</summary>
public sealed class WeekPlanner(IDbContextFactory<EstateDb> databases, EstateSnapshots snapshots, SetsQuery sets, TimeProvider clock)
{
    /// <summary>A draft that begins with the snapshot's plan.</summary>
    public WeekDraft Draft(WeekContext week) => new(PlanFrom(week.Snapshot), week.Snapshot.Plan, week.OnSameValve, clock);

    /// <summary>Plans from a snapshot with changes made by hand, on what the snapshot learned of its blocks.</summary>
    public static PlanWithEdits PlanFrom(EstateSnapshot snapshot)
    {
        var fitted = new Lazy<FittedEstate>(() =>
            snapshot.Fitted ?? Planner.Fit(PlanRequests.From(snapshot.Contents, snapshot.Plan.AsOf, snapshot.Plan.HorizonDays)));
        return (edits, cancellation) => Planner.Plan(
            fitted.Value, fitted.Value.Request with { HoursByHand = edits.HoursByHand, Changes = edits.Changes }, cancellation);
    }

    /// <summary>No more than all hours of all days ahead. [h]</summary>
    public static double GreatestHours(Planning.Plan plan) => 24.0 * plan.HorizonDays;

    /// <summary>Published sets that stand, with what was confirmed.</summary>
    public Task<StandingSets> StandingSetsAsync(CancellationToken cancellation = default) => sets.LoadAsync(cancellation);

    /// <summary>Keeps a plan as the one the irrigators work from, and tells every open page.</summary>
    public async Task PublishAsync(Planning.Plan plan, Publication publication, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var published = plan.Sets.Select(set => new PublishedSet
        {
            ValveCode = set.Valve,
            SourceCode = set.Source,
            Start = set.Start,
            End = set.End,
            Hours = set.Hours,
            FlowM3PerH = set.FlowM3PerH,
        });
        await PublishedPlans.PublishAsync(
            db, plan.AsOf, PlanJson.Write(plan), published.ToList(), publication.By, publication.Note, clock.GetUtcNow(), cancellation);
        snapshots.Invalidate($"{publication.By} published {WeekWords.Count(plan.Sets.Count, "set")}.");
    }
}
