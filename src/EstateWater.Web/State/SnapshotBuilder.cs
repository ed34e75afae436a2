using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;
using EstateWater.Web.Hosting;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.State;

/// <summary>Reads the estate from the store and plans from it.</summary>
public sealed class SnapshotBuilder(IDbContextFactory<EstateDb> databases, EstateClock clock)
{
    /// <summary>A plan looks from its moment: so long it may serve again when nothing it was made from changed.</summary>
    private static readonly TimeSpan PlanHolds = TimeSpan.FromHours(1);

    private volatile EstateSnapshot? last;

    /// <summary>The snapshot of this moment.</summary>
    /// <param name="version">What to call it.</param>
    /// <param name="cancellation">Stops the work.</param>
    public async Task<EstateSnapshot> BuildAsync(long version, CancellationToken cancellation)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var now = clock.GetUtcNow();
        if (await EstateStore.LoadAsync(db, cancellation) is not { } contents)
        {
            return EstateSnapshot.Empty(now, version);
        }

        clock.UseZone(TimeZoneInfo.FindSystemTimeZoneById(contents.Estate.TimeZone));
        if (PlanGaps.Of(contents, now) is { Count: > 0 } gaps)
        {
            return EstateSnapshot.Empty(now, version) with { Contents = contents, Problem = string.Join(" ", gaps.Select(g => g.Message)) };
        }

        var published = await PublishedPlans.Standing(db)
            .AsNoTracking()
            .Include(p => p.Sets)
            .ThenInclude(s => s.Confirmations)
            .AsSplitQuery()
            .FirstOrDefaultAsync(cancellation);
        var begun = await PublishedPlans.BegunAsync(db, now, cancellation);
        var (plan, fitted) = PlanOf(contents, published, begun, now, cancellation);
        return last = new EstateSnapshot
        {
            Contents = contents,
            Plan = plan,
            Fitted = fitted,
            Version = version,
            Published = published,
            Begun = begun,
        };
    }

    private (Plan Plan, FittedEstate Fitted) PlanOf(
        EstateContents contents, PublishedPlan? published, IReadOnlyList<PublishedSet> begun, DateTimeOffset now, CancellationToken cancellation)
    {
        if (last is { Fitted: { } fittedBefore } before
            && now - before.Plan.AsOf < PlanHolds
            && PlanInputs.AreSame(before.Contents, contents, now)
            && PlanInputs.AreSame(before.Published, before.Plan.AsOf, published, now)
            && before.Begun.Select(s => s.Id).SequenceEqual(begun.Select(s => s.Id)))
        {
            return (before.Plan, fittedBefore);
        }

        var request = PlanRequests.From(contents, now).Told(published, begun);

        // A reading that was entered shows at once; within the hour all blocks are learned together again.
        var fitted = last?.Fitted is { } learned && now - learned.LearnedAsOf < PlanHolds
            ? Planner.Refit(learned, request, cancellation)
            : Planner.Fit(request, cancellation);
        return (Planner.Plan(fitted, request, cancellation), fitted);
    }
}
