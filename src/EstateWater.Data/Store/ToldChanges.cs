using EstateWater.Agronomy.Units;
using EstateWater.Data.Model;
using EstateWater.Data.Store.Taken;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>A line of the record for readers with units of their own.</summary>
/// <param name="Change">As it is kept.</param>
/// <param name="What">What it is now.</param>
/// <param name="Before">What it was before; <see langword="null"/> where there was nothing.</param>
public sealed record ToldChange(ChangeRecord Change, Sentence What, Sentence? Before);

/// <summary>Tells lines of the record with their quantities, from the entries they are about, which nobody alters.</summary>
public static class ToldChanges
{
    /// <summary>Tells each line, in the order given; one about no entry in the words that are kept.</summary>
    public static async Task<IReadOnlyList<ToldChange>> OfAsync(EstateDb db, IReadOnlyList<ChangeRecord> changes, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(changes);
        var ids = changes.Select(c => c.EntryId).OfType<Guid>().ToList();
        var words = await ChangeWords.ForAsync(db, cancellation);
        var taken = await db.TakenEntries.AsNoTracking()
            .Where(e => ids.Contains(e.EntryId) || db.TakenEntries.Any(later => later.Replaces == e.EntryId && ids.Contains(later.EntryId)))
            .ToDictionaryAsync(e => e.EntryId, cancellation);
        var sets = await db.PublishedSets.AsNoTracking().Include(s => s.Confirmations)
            .Where(s => s.Confirmations.Any(c => ids.Contains(c.EntryId)))
            .ToListAsync(cancellation);
        var confirmed = sets.SelectMany(set => set.Confirmations.Select(said => (set, said))).ToDictionary(c => c.said.EntryId);
        return [.. changes.Select(Tell)];

        ToldChange Tell(ChangeRecord change)
        {
            if (change.EntryId is { } id && taken.TryGetValue(id, out var entry))
            {
                var (what, before) = TakenWords.Of(entry, entry.Replaces is { } replaced ? taken[replaced] : null, words);
                return new(change, what, before);
            }

            if (change.EntryId is { } entryId && confirmed.TryGetValue(entryId, out var done))
            {
                return new(change, words.Confirmed(done.set, done.said), done.said.Replaces is { } former ? words.Confirmed(done.set, confirmed[former].said) : null);
            }

            return new(change, change.What, change.Before is { } kept ? (Sentence)kept : null);
        }
    }
}
