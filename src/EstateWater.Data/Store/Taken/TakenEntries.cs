using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store.Taken;

/// <summary>Stores what people take in the rows.</summary>
public static class TakenEntries
{
    /// <summary>An entry may have waited so long on a phone without signal.</summary>
    public static readonly TimeSpan LongestAge = TimeSpan.FromDays(31);

    /// <summary>Stores an entry once, with the observations it stands for, all or nothing.</summary>
    /// <param name="db">The database.</param>
    /// <param name="message">The entry, its values checked.</param>
    /// <param name="now">The server's clock.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static Task<TakenResult> TakeAsync(EstateDb db, TakenMessage message, DateTimeOffset now, CancellationToken cancellation = default) =>
        TakeAsync(db, message, now, undoneBy: null, cancellation);

    /// <summary>Takes an entry back: what it replaced stands again, under the name of whoever took it, or nothing where it was the first. All entries stay in the record.</summary>
    /// <returns>Why it cannot be taken back; <see langword="null"/> when it was.</returns>
    public static async Task<string?> UndoAsync(EstateDb db, Guid entryId, string by, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentException.ThrowIfNullOrWhiteSpace(by);
        var entries = db.TakenEntries.AsNoTracking();
        if (await entries.SingleOrDefaultAsync(e => e.EntryId == entryId, cancellation) is not { } entry)
        {
            return "There is no such entry.";
        }

        var former = entry.Replaces is { } replaced ? await entries.SingleAsync(e => e.EntryId == replaced, cancellation) : null;
        var content = former is { IsWithdrawal: false } ? TakenContent.Parse(former.Content) : null;
        var again = new TakenMessage(Guid.NewGuid(), content, entryId, content is null ? by : former!.TakenBy, now);
        return (await TakeAsync(db, again, now, by, cancellation)).Problem;
    }

    /// <summary>Entries that count and that were taken on a day or later, oldest first.</summary>
    public static async Task<IReadOnlyList<TakenEntry>> StandingSinceAsync(EstateDb db, DateTimeOffset since, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        var entries = await db.TakenEntries.AsNoTracking().Where(e => e.ReceivedAt >= since).OrderBy(e => e.Id).ToListAsync(cancellation);
        var replaced = entries.Select(e => e.Replaces).OfType<Guid>().ToHashSet();
        return [.. entries.Where(e => !e.IsWithdrawal && !replaced.Contains(e.EntryId))];
    }

    private static async Task<TakenResult> TakeAsync(EstateDb db, TakenMessage message, DateTimeOffset now, string? undoneBy, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(message);
        ArgumentException.ThrowIfNullOrWhiteSpace(message.TakenBy);
        if (message.Content is null && message.Replaces is null)
        {
            throw new ArgumentException("A withdrawal names what it withdraws.", nameof(message));
        }

        // The transaction takes the write lock at once, so that of two posts of one entry the second finds the first.
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var result = await new TakenTurn(db, message, now, await ChangeWords.ZoneAsync(db, cancellation), undoneBy).TakeAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return result;
    }
}
