using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>Plans as they were published, and what was really done.</summary>
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
        db.PublishedPlans.Add(plan);
        await db.SaveChangesAsync(cancellation);
        return plan;
    }

    /// <summary>Stores an irrigator's entry once, with the applied water it stands for, both or neither.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Hours or meter are not numbers in range.</exception>
    public static async Task<ConfirmationResult> ConfirmSetAsync(
        EstateDb db, ConfirmationEntry entry, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentException.ThrowIfNullOrWhiteSpace(entry.ConfirmedBy);
        RequireInRange(entry);

        // The transaction takes the write lock at once, so that of two posts of one entry the second finds the first.
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var result = await RefusalAsync(db, entry, cancellation) ?? await StoreAsync(db, entry, now, cancellation);
        await transaction.CommitAsync(cancellation);
        return result;
    }

    private static async Task<ConfirmationResult?> RefusalAsync(EstateDb db, ConfirmationEntry entry, CancellationToken cancellation)
    {
        var confirmations = db.SetConfirmations.AsNoTracking();
        if (await confirmations.SingleOrDefaultAsync(c => c.EntryId == entry.EntryId, cancellation) is { } sameId)
        {
            return IsSame(sameId, entry)
                ? new(ConfirmationStatus.StoredBefore, sameId, null)
                : new(ConfirmationStatus.Conflict, sameId, "This entry was stored before with other content.");
        }

        if (await db.PublishedSets.AsNoTracking().SingleOrDefaultAsync(s => s.Id == entry.SetId, cancellation) is not { } set)
        {
            return new(ConfirmationStatus.UnknownSet, null, $"There is no set {entry.SetId}.");
        }

        if (await confirmations.SingleOrDefaultAsync(c => c.SetId == entry.SetId, cancellation) is { } sameSet)
        {
            return new(ConfirmationStatus.Conflict, sameSet, $"{sameSet.ConfirmedBy} confirmed this set already.");
        }

        var isRecorded = entry.Hours > 0 && await db.AppliedWaters.AnyAsync(w => w.ValveCode == set.ValveCode && w.StartedAt == set.Start, cancellation);
        return isRecorded ? new(ConfirmationStatus.Conflict, null, $"Water through {set.ValveCode} from this start is recorded already.") : null;
    }

    private static async Task<ConfirmationResult> StoreAsync(EstateDb db, ConfirmationEntry entry, DateTimeOffset now, CancellationToken cancellation)
    {
        var set = await db.PublishedSets.AsNoTracking().SingleAsync(s => s.Id == entry.SetId, cancellation);
        var water = entry.Hours > 0 ? await StoreWaterAsync(db, set, entry, cancellation) : null;
        var confirmation = new SetConfirmation
        {
            EntryId = entry.EntryId,
            SetId = entry.SetId,
            Hours = entry.Hours,
            MeterM3 = entry.MeterM3,
            ConfirmedBy = entry.ConfirmedBy,
            Note = entry.Note,
            EnteredAt = entry.EnteredAt,
            ReceivedAt = now,
            AppliedWaterId = water?.Id,
        };
        db.SetConfirmations.Add(confirmation);
        await db.SaveChangesAsync(cancellation);
        return new(ConfirmationStatus.Stored, confirmation, null);
    }

    private static async Task<AppliedWater> StoreWaterAsync(EstateDb db, PublishedSet set, ConfirmationEntry entry, CancellationToken cancellation)
    {
        var water = new AppliedWater
        {
            ValveCode = set.ValveCode,
            StartedAt = set.Start,
            Hours = entry.Hours,
            MeterM3 = entry.MeterM3,
            ConfirmedBy = entry.ConfirmedBy,
            Note = entry.Note,
        };
        db.AppliedWaters.Add(water);
        await db.SaveChangesAsync(cancellation);
        return water;
    }

    private static bool IsSame(SetConfirmation stored, ConfirmationEntry entry) =>
        (stored.SetId, stored.Hours, stored.MeterM3, stored.ConfirmedBy, stored.Note, stored.EnteredAt)
        == (entry.SetId, entry.Hours, entry.MeterM3, entry.ConfirmedBy, entry.Note, entry.EnteredAt);

    private static void RequireInRange(ConfirmationEntry entry)
    {
        if (!(entry.Hours is >= 0 and <= 744))
        {
            throw new ArgumentOutOfRangeException(nameof(entry), entry.Hours, "Hours must be 0 to 744 h.");
        }

        if (entry.MeterM3 is { } meter && !(meter >= 0 && double.IsFinite(meter)))
        {
            throw new ArgumentOutOfRangeException(nameof(entry), meter, "The meter's difference must be 0 m³ or more.");
        }
    }
}
