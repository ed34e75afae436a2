using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>Plans as they were published.</summary>
public static class PublishedPlans
{
    /// <summary>Keeps a plan as it was computed.</summary>
    /// <param name="db">The database.</param>
    /// <param name="asOf">The moment the plan looks from.</param>
    /// <param name="planJson">The plan document.</param>
    /// <param name="sets">Its sets, without ids.</param>
    /// <param name="by">Who publishes it.</param>
    /// <param name="note">What the irrigators should know.</param>
    /// <param name="now">The server's clock.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static async Task<PublishedPlan> PublishAsync(
        EstateDb db, DateTimeOffset asOf, string planJson, IReadOnlyList<PublishedSet> sets, string by, string? note, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentException.ThrowIfNullOrWhiteSpace(planJson);
        ArgumentException.ThrowIfNullOrWhiteSpace(by);
        ArgumentNullException.ThrowIfNull(sets);
        var plan = new PublishedPlan { AsOf = asOf, PublishedAt = now, PublishedBy = by, Note = note, PlanJson = planJson, Sets = [.. sets] };
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        db.PublishedPlans.Add(plan);
        await db.SaveChangesAsync(cancellation);
        db.Changes.Add(new ChangeRecord { At = now, By = by, Kind = ChangeKind.Publication, What = ChangeWords.Published(plan), PlanId = plan.Id });
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return plan;
    }

    /// <summary>Takes the plan published last back, so that the one before it stands again. Both stay in the record.</summary>
    /// <returns>Why it cannot be taken back; <see langword="null"/> when it was.</returns>
    public static async Task<string?> WithdrawAsync(EstateDb db, int planId, string by, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentException.ThrowIfNullOrWhiteSpace(by);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var last = await Standing(db).Include(p => p.Sets).ThenInclude(s => s.Confirmations).AsSplitQuery().FirstOrDefaultAsync(cancellation);
        if (last is null || last.Id != planId)
        {
            return "This is not the plan that stands now; only the last publication can be taken back.";
        }

        // Once a valve was opened for it, a plan is history; the way on is another plan.
        if (last.Sets.Any(s => s.Start <= now || s.Confirmations.Count > 0))
        {
            return "Its first set has begun or was confirmed. Publish a new plan instead.";
        }

        (last.WithdrawnAt, last.WithdrawnBy) = (now, by);
        var former = await Standing(db).AsNoTracking().Where(p => p.Id != planId).FirstOrDefaultAsync(cancellation);
        var words = await ChangeWords.ForAsync(db, cancellation);
        db.Changes.Add(new ChangeRecord
        {
            At = now,
            By = by,
            Kind = ChangeKind.Publication,
            What = former is null ? "Took the publication back: no plan stands" : $"Took the publication back: the plan of {words.Clock(former.PublishedAt)} by {former.PublishedBy} stands again",
            Before = ChangeWords.Published(last),
        });
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return null;
    }

    /// <summary>Sets that people were told of, that have begun and of which nobody said anything, in order of start.</summary>
    /// <remarks>Of each plan those that began before the next was published: from then on people followed that one.</remarks>
    /// <param name="db">The database.</param>
    /// <param name="now">The moment it is asked for.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static async Task<IReadOnlyList<PublishedSet>> BegunAsync(EstateDb db, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        var plans = await Standing(db).Select(p => new { p.Id, p.PublishedAt }).ToListAsync(cancellation);
        var until = FollowedUntil(plans.Select(p => (p.Id, p.PublishedAt)));
        var begun = await db.PublishedSets
            .AsNoTracking()
            .Where(s => s.Start <= now)
            .Select(s => new { Set = s, IsSaid = s.Confirmations.Count > 0 })
            .ToListAsync(cancellation);

        // What was said of an opening counts for a later plan's set that names it again.
        var said = begun.Where(s => s.IsSaid).Select(s => (s.Set.ValveCode, s.Set.Start)).ToHashSet();
        return [.. begun
            .Select(s => s.Set)
            .Where(s => until.TryGetValue(s.PlanId, out var end) && s.Start < end && !said.Contains((s.ValveCode, s.Start)))
            .OrderBy(s => s.Start).ThenBy(s => s.ValveCode, StringComparer.Ordinal).ThenByDescending(s => s.Id)
            .DistinctBy(s => (s.ValveCode, s.Start))];
    }

    /// <summary>Until when people followed each plan, by its number: a set that begins later was never run for it.</summary>
    /// <param name="standing">Number and publication of the plans that were not taken back, in any order.</param>
    public static IReadOnlyDictionary<int, DateTimeOffset> FollowedUntil(IEnumerable<(int Id, DateTimeOffset PublishedAt)> standing)
    {
        var ordered = standing.OrderBy(p => p.PublishedAt).ThenBy(p => p.Id).ToList();
        return ordered.Zip(ordered.Skip(1).Select(next => next.PublishedAt).Append(DateTimeOffset.MaxValue)).ToDictionary(p => p.First.Id, p => p.Second);
    }

    /// <summary>Plans that were not taken back, the last published first.</summary>
    public static IQueryable<PublishedPlan> Standing(EstateDb db)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.PublishedPlans.Where(p => p.WithdrawnAt == null).OrderByDescending(p => p.Id);
    }
}
