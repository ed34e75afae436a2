using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>What irrigators say was done: each entry is stored once, corrections replace, and water counts once.</summary>
public static class Confirmations
{
    /// <summary>The longest set that an entry can tell of: a month. [h]</summary>
    public const double LongestHours = 744;

    /// <summary>A phone's clock may run so far ahead of ours.</summary>
    public static readonly TimeSpan ClockTolerance = TimeSpan.FromMinutes(15);

    /// <summary>Stores an irrigator's entry once, with the applied water it stands for, both or neither.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Hours or meter are not numbers in range.</exception>
    public static async Task<ConfirmationResult> ConfirmAsync(EstateDb db, ConfirmationEntry entry, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentException.ThrowIfNullOrWhiteSpace(entry.ConfirmedBy);
        RequireInRange(entry);

        // The transaction takes the write lock at once, so that of two posts of one entry the second finds the first.
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var result = await new ConfirmationTurn(db, entry, now, await ChangeWords.ForAsync(db, cancellation)).TakeAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return result;
    }

    /// <summary>Puts what a correction replaced back in its place, as another correction; all entries stay in the record.</summary>
    /// <returns>Why it cannot be taken back; <see langword="null"/> when it was.</returns>
    public static async Task<string?> UndoCorrectionAsync(EstateDb db, Guid entryId, string by, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentException.ThrowIfNullOrWhiteSpace(by);
        var correction = await db.SetConfirmations.AsNoTracking().SingleOrDefaultAsync(c => c.EntryId == entryId, cancellation);
        if (correction?.Replaces is not { } replaced)
        {
            return "This entry corrects none.";
        }

        var former = await db.SetConfirmations.AsNoTracking().SingleAsync(c => c.EntryId == replaced, cancellation);
        var again = new ConfirmationEntry(Guid.NewGuid(), former.SetId, former.Hours, former.MeterM3, by, former.Note, now)
        {
            StartedAt = former.StartedAt,
            MeterBeforeM3 = former.MeterBeforeM3,
            MeterAfterM3 = former.MeterAfterM3,
            NotRun = former.NotRun,
            Replaces = entryId,
        };
        return (await ConfirmAsync(db, again, now, cancellation)).Problem;
    }

    private static void RequireInRange(ConfirmationEntry entry)
    {
        if (!(entry.Hours is >= 0 and <= LongestHours))
        {
            throw new ArgumentOutOfRangeException(nameof(entry), entry.Hours, FormattableString.Invariant($"Hours must be 0 to {LongestHours} h."));
        }

        foreach (var meter in new[] { entry.MeterM3, entry.MeterBeforeM3, entry.MeterAfterM3, entry.UsedM3 })
        {
            if (meter is { } m3 && !(m3 >= 0 && double.IsFinite(m3)))
            {
                throw new ArgumentOutOfRangeException(nameof(entry), m3, "The meter and its difference must be 0 m³ or more.");
            }
        }
    }
}
