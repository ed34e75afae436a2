using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store.Taken;

/// <summary>One entry's turn within a transaction: refused, known already, or stored with its observations and its line in the record.</summary>
/// <param name="db">The database, a transaction open.</param>
/// <param name="message">The entry.</param>
/// <param name="now">The server's clock.</param>
/// <param name="zone">The estate's zone.</param>
/// <param name="undoneBy">Who takes back what stands, whoever took it; null where its taker says something else.</param>
internal sealed class TakenTurn(EstateDb db, TakenMessage message, DateTimeOffset now, TimeZoneInfo zone, string? undoneBy)
{
    private readonly ChangeWords words = new(zone);
    private readonly TakenRows rows = new(zone);

    // A phone's clock that runs ahead must not hide readings from the plan until ours has caught up: all go back by as much.
    private readonly TakenContent? content = message.Content is { } said ? Shifted(said, now) : null;

    public async Task<TakenResult> TakeAsync(CancellationToken cancellation)
    {
        if (await Entries.SingleOrDefaultAsync(e => e.EntryId == message.EntryId, cancellation) is { } sameId)
        {
            return IsSame(sameId)
                ? new(TakenStatus.StoredBefore, sameId, null)
                : new(TakenStatus.OtherContent, sameId, "This entry was stored before with other content.");
        }

        var replaced = message.Replaces is { } id ? await Entries.SingleOrDefaultAsync(e => e.EntryId == id, cancellation) : null;
        return await RefusalAsync(replaced, cancellation) ?? await StoreAsync(replaced, cancellation);
    }

    private IQueryable<TakenEntry> Entries => db.TakenEntries.AsNoTracking();

    private async Task<TakenResult?> RefusalAsync(TakenEntry? replaced, CancellationToken cancellation)
    {
        if (message.Replaces is not null)
        {
            if (replaced is null)
            {
                return new(TakenStatus.NotStanding, null, "The entry that this one replaces is not stored.");
            }

            if (await Entries.SingleOrDefaultAsync(e => e.Replaces == replaced.EntryId, cancellation) is { } later)
            {
                return new(TakenStatus.NotStanding, later, $"{await ReplacedByAsync(later, cancellation)} {(later.IsWithdrawal ? "withdrew" : "corrected")} this already.");
            }

            if (undoneBy is null && !string.Equals(replaced.TakenBy, message.TakenBy, StringComparison.OrdinalIgnoreCase))
            {
                return new(TakenStatus.NotTheirs, replaced, $"{replaced.TakenBy} took this and can change it; the manager can take it back in the record of changes.");
            }

            if ((content is not null && content.Kind != replaced.Kind) || (content is null && replaced.IsWithdrawal))
            {
                return new(TakenStatus.NotStanding, replaced, "A correction tells of the same kind of thing as what it replaces.");
            }
        }

        if (content is null)
        {
            return null;
        }

        if (!await db.Blocks.AnyAsync(b => b.Code == content.BlockCode, cancellation))
        {
            return new(TakenStatus.UnknownBlock, null, $"There is no block {content.BlockCode}.");
        }

        if (LastMoment(content) > now || (undoneBy is null && content.TakenAt < now - TakenEntries.LongestAge))
        {
            return new(TakenStatus.WrongTime, null, $"It was taken at {words.Clock(LastMoment(content))}, which is {(LastMoment(content) > now ? "still ahead" : "too long ago")}. Look at the phone’s clock.");
        }

        return await rows.TwiceAsync(db, content, replaced, cancellation) is { } twice ? new(TakenStatus.Twice, null, twice) : null;
    }

    private async Task<TakenResult> StoreAsync(TakenEntry? replaced, CancellationToken cancellation)
    {
        if (replaced is not null)
        {
            await TakenRows.RemoveAsync(db, replaced, cancellation);
            await db.TakenEntries.Where(e => e.Id == replaced.Id).ExecuteUpdateAsync(e => e.SetProperty(r => r.RowIds, Array.Empty<int>()), cancellation);
        }

        var entry = new TakenEntry
        {
            EntryId = message.EntryId,
            Kind = content?.Kind ?? replaced!.Kind,
            BlockCode = content?.BlockCode ?? replaced!.BlockCode,
            Content = content?.ToText() ?? "",
            Replaces = message.Replaces,
            TakenBy = message.TakenBy,
            EnteredAt = message.EnteredAt,
            ReceivedAt = now,
            RowIds = content is null ? [] : await rows.AddAsync(db, content, message.TakenBy, cancellation),
        };
        var (what, before) = TakenWords.Of(entry, replaced, words);
        db.TakenEntries.Add(entry);
        db.Changes.Add(new ChangeRecord
        {
            At = now,
            By = undoneBy ?? message.TakenBy,
            Kind = ChangeKind.Reading,
            What = ChangeWords.Short(what),
            Before = before is null ? null : ChangeWords.Short(before),
            EntryId = message.EntryId,
        });
        await db.SaveChangesAsync(cancellation);
        return new(TakenStatus.Stored, entry, null);
    }

    // What was put back has its first taker; the record knows who put it back.
    private async Task<string> ReplacedByAsync(TakenEntry later, CancellationToken cancellation) =>
        await db.Changes.Where(c => c.EntryId == later.EntryId).Select(c => c.By).FirstOrDefaultAsync(cancellation) ?? later.TakenBy;

    // Who signed in when the phone sends it again may be someone else.
    private bool IsSame(TakenEntry stored) =>
        (stored.EnteredAt, stored.Replaces) == (message.EnteredAt, message.Replaces)
        && stored.Content == (message.Content is null ? "" : Shifted(message.Content, stored.ReceivedAt).ToText());

    private static TakenContent Shifted(TakenContent said, DateTimeOffset now)
    {
        var ahead = LastMoment(said) - now;
        return ahead <= TimeSpan.Zero || ahead > Confirmations.ClockTolerance ? said : said with
        {
            TakenAt = said.TakenAt - ahead,
            Leaves = said.Leaves is { } set ? set with { Leaves = [.. set.Leaves.Select(l => l with { TakenAt = l.TakenAt - ahead })] } : null,
        };
    }

    private static DateTimeOffset LastMoment(TakenContent content) => content.Leaves?.Leaves.Max(l => l.TakenAt) ?? content.TakenAt;
}
