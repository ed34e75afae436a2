using System.Text.Json;
using EstateWater.Agronomy.Units;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Planning.Rounds;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Rounds;

/// <summary>The rounds of readings: planned from the outlook, kept once their day has come or somebody changed them.</summary>
/// <param name="databases">The store.</param>
/// <param name="snapshots">The estate as the pages show it.</param>
/// <param name="clock">The estate's clock.</param>
public sealed class EstateRounds(IDbContextFactory<EstateDb> databases, EstateSnapshots snapshots, TimeProvider clock)
{
    // Reasons keep their quantities, so that each reader is told them in their own units.
    private static readonly JsonSerializerOptions Keeping = new() { Converters = { new SentenceKeeping() } };

    /// <summary>The round of the estate's day; null while there is no plan to make one from.</summary>
    /// <remarks>Kept from its first look on, so that readings that come in do not change it while it is walked.</remarks>
    public Task<RoundPlan?> TodayAsync(EstateSnapshot snapshot, CancellationToken cancellation = default) =>
        OfDayAsync(snapshot, snapshot.DayOf(clock.GetUtcNow()), cancellation);

    /// <summary>The round that is planned next: today's until its window has closed, then tomorrow's; null while there is no plan.</summary>
    public async Task<RoundPlan?> NextAsync(CancellationToken cancellation = default)
    {
        var snapshot = await snapshots.GetAsync(cancellation);
        var today = await TodayAsync(snapshot, cancellation);
        return today is null || clock.GetUtcNow() <= today.WindowTo ? today : await OfDayAsync(snapshot, today.Date.AddDays(1), cancellation);
    }

    /// <summary>Plans a day's round anew with what the manager wants of it. False when the day has none.</summary>
    /// <param name="date">The day.</param>
    /// <param name="change">What to change.</param>
    /// <param name="by">Who changes it.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<bool> ChangeAsync(DateOnly date, RoundChange change, string? by, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(change);
        var snapshot = await snapshots.GetAsync(cancellation);
        if (await OfDayAsync(snapshot, date, cancellation) is not { } before || Make(snapshot, date, change.Apply(before, snapshot.Contents)) is not { } round)
        {
            return false;
        }

        await using var db = await databases.CreateDbContextAsync(cancellation);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var kept = await db.PlannedRounds.SingleOrDefaultAsync(r => r.Date == date, cancellation);
        if (kept is null)
        {
            kept = new PlannedRound { Date = date, MadeAt = clock.GetUtcNow(), Document = "" };
            db.PlannedRounds.Add(kept);
        }

        (kept.Document, kept.MadeAt, kept.ChangedBy) = (JsonSerializer.Serialize(round, Keeping), clock.GetUtcNow(), by);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }

    private async Task<RoundPlan?> OfDayAsync(EstateSnapshot snapshot, DateOnly date, CancellationToken cancellation)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        if (await KeptAsync(db, date, cancellation) is { } kept)
        {
            return kept;
        }

        var settings = (await db.PlannedRounds.AsNoTracking().OrderByDescending(r => r.Date).FirstOrDefaultAsync(cancellation)) is { } last ? Read(last).Settings : new RoundSettings();
        var round = Make(snapshot, date, new RoundWishes(settings, [], []));
        if (round is not null && date == snapshot.DayOf(clock.GetUtcNow()))
        {
            // The transaction takes the write lock at once: of two first looks, the second finds what the first kept.
            await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
            if (await KeptAsync(db, date, cancellation) is { } meanwhile)
            {
                return meanwhile;
            }

            db.PlannedRounds.Add(new PlannedRound { Date = date, MadeAt = clock.GetUtcNow(), Document = JsonSerializer.Serialize(round, Keeping) });
            await db.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return round;
    }

    private static async Task<RoundPlan?> KeptAsync(EstateDb db, DateOnly date, CancellationToken cancellation) =>
        await db.PlannedRounds.AsNoTracking().SingleOrDefaultAsync(r => r.Date == date, cancellation) is { } kept ? Read(kept) : null;

    private static RoundPlan Read(PlannedRound kept) => JsonSerializer.Deserialize<RoundPlan>(kept.Document, Keeping)!;

    private static RoundPlan? Make(EstateSnapshot snapshot, DateOnly date, RoundWishes wishes)
    {
        var ahead = date.DayNumber - snapshot.Today.DayNumber;
        return snapshot is { HasPlan: true, Fitted: { } fitted } && ahead >= 0 && ahead < snapshot.Plan.HorizonDays
            ? EstateRound.Plan(fitted, snapshot.Plan, date, wishes.Settings, wishes.Added, wishes.Dropped)
            : null;
    }
}
