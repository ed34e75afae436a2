using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>One entry's turn within a transaction: refused, known already, or stored with its water and its line in the record.</summary>
internal sealed class ConfirmationTurn(EstateDb db, ConfirmationEntry entry, DateTimeOffset now, ChangeWords words)
{
    public async Task<ConfirmationResult> TakeAsync(CancellationToken cancellation)
    {
        var confirmations = db.SetConfirmations.AsNoTracking();
        if (await confirmations.SingleOrDefaultAsync(c => c.EntryId == entry.EntryId, cancellation) is { } sameId)
        {
            return IsSame(sameId)
                ? new(ConfirmationStatus.StoredBefore, sameId, null)
                : new(ConfirmationStatus.Conflict, sameId, "This entry was stored before with other content.");
        }

        var set = await db.PublishedSets.AsNoTracking().Include(s => s.Confirmations).SingleOrDefaultAsync(s => s.Id == entry.SetId, cancellation);
        if (set is null)
        {
            return new(ConfirmationStatus.UnknownSet, null, $"There is no set {entry.SetId}.");
        }

        return Contradiction(set)
            ?? Early(set)
            ?? await CountedAsync(set, cancellation)
            ?? await StoreAsync(set, cancellation);
    }

    private ConfirmationResult? Contradiction(PublishedSet set)
    {
        var stands = set.Confirmation;
        if (entry.Replaces is { } replaced && stands?.EntryId != replaced)
        {
            var problem = stands is null ? "There is nothing to correct yet." : $"{stands.ConfirmedBy} corrected this already: {words.Confirmed(set, stands)}.";
            return new(ConfirmationStatus.CorrectedBefore, stands, problem);
        }

        return entry.Replaces is null && stands is not null
            ? new(ConfirmationStatus.Conflict, stands, $"{stands.ConfirmedBy} confirmed this set already.")
            : null;
    }

    private ConfirmationResult? Early(PublishedSet set) => entry.Hours > 0 && SaidStart(set) > now + Confirmations.ClockTolerance
        ? new(
            ConfirmationStatus.NotYet,
            null,
            $"{set.ValveCode} would open at {words.Clock(SaidStart(set))}, which is still ahead. Confirm it once it has run; if it ran earlier, say when it was opened.")
        : null;

    /// <summary>Water through the same valve at the same time is the same water, whoever recorded it.</summary>
    private async Task<ConfirmationResult?> CountedAsync(PublishedSet set, CancellationToken cancellation)
    {
        var (start, end) = (Start(set), Start(set).AddHours(entry.Hours));
        var earliest = start.AddHours(-Confirmations.LongestHours);
        var ours = set.Confirmation?.AppliedWaterId;
        var near = await db.AppliedWaters.AsNoTracking()
            .Where(w => w.ValveCode == set.ValveCode && w.StartedAt >= earliest && w.StartedAt <= end && w.Id != ours)
            .ToListAsync(cancellation);

        // Sets that follow each other may touch: clocks and hours are rounded.
        var twin = near.Find(w => entry.Hours > 0 && Overlap(w, start, end) > TimeSpan.FromHours(Math.Min(w.Hours, entry.Hours) / 2));
        return twin is null ? null : new(ConfirmationStatus.Conflict, null, $"Water through {set.ValveCode} from {words.Clock(twin.StartedAt)} is recorded already.");
    }

    private async Task<ConfirmationResult> StoreAsync(PublishedSet set, CancellationToken cancellation)
    {
        var before = set.Confirmation;
        var water = await WaterAsync(set, before, cancellation);
        var said = new SetConfirmation
        {
            EntryId = entry.EntryId,
            SetId = entry.SetId,
            Replaces = entry.Replaces,
            StartedAt = Start(set),
            Hours = entry.Hours,
            MeterM3 = entry.UsedM3,
            MeterBeforeM3 = entry.MeterBeforeM3,
            MeterAfterM3 = entry.MeterAfterM3,
            NotRun = entry.NotRun,
            ConfirmedBy = entry.ConfirmedBy,
            Note = entry.Note,
            EnteredAt = entry.EnteredAt,
            ReceivedAt = now,
            AppliedWaterId = water?.Id,
        };
        db.SetConfirmations.Add(said);
        db.Changes.Add(new ChangeRecord
        {
            At = now,
            By = entry.ConfirmedBy,
            Kind = before is null ? ChangeKind.Confirmation : ChangeKind.Correction,
            What = ChangeWords.Short(words.Confirmed(set, said)),
            Before = before is null ? null : ChangeWords.Short(words.Confirmed(set, before)),
            EntryId = entry.EntryId,
        });
        await db.SaveChangesAsync(cancellation);
        return new(ConfirmationStatus.Stored, said, null);
    }

    /// <summary>The row of applied water: new for a first entry, the same row for a correction, none for zero hours.</summary>
    private async Task<AppliedWater?> WaterAsync(PublishedSet set, SetConfirmation? before, CancellationToken cancellation)
    {
        var old = before?.AppliedWaterId;
        await db.SetConfirmations.Where(c => c.SetId == set.Id).ExecuteUpdateAsync(c => c.SetProperty(r => r.AppliedWaterId, (int?)null), cancellation);
        if (entry.Hours == 0)
        {
            await db.AppliedWaters.Where(w => w.Id == old).ExecuteDeleteAsync(cancellation);
            return null;
        }

        var water = new AppliedWater
        {
            Id = old ?? 0,
            ValveCode = set.ValveCode,
            StartedAt = Start(set),
            Hours = entry.Hours,
            MeterM3 = entry.UsedM3,
            ConfirmedBy = entry.ConfirmedBy,
            Note = entry.Note,
        };
        db.AppliedWaters.Update(water);
        await db.SaveChangesAsync(cancellation);

        // The next correction brings this row anew.
        db.Entry(water).State = EntityState.Detached;
        return water;
    }

    private DateTimeOffset SaidStart(PublishedSet set) => entry.StartedAt ?? set.Confirmation?.StartedAt ?? set.Start;

    // A phone's clock that runs ahead must not hide the water from the plan until ours has caught up.
    private DateTimeOffset Start(PublishedSet set) => entry.Hours > 0 && SaidStart(set) > now ? now : SaidStart(set);

    private static TimeSpan Overlap(AppliedWater water, DateTimeOffset start, DateTimeOffset end)
    {
        var ends = water.StartedAt.AddHours(water.Hours);
        return (ends < end ? ends : end) - (water.StartedAt > start ? water.StartedAt : start);
    }

    // Who sends it is not compared: after a lost answer the same entry may be sent again by whoever signed in on the phone since.
    private bool IsSame(SetConfirmation stored) =>
        (stored.SetId, stored.Hours, stored.MeterM3, stored.Note, stored.EnteredAt, stored.NotRun, stored.Replaces)
            == (entry.SetId, entry.Hours, entry.UsedM3, entry.Note, entry.EnteredAt, entry.NotRun, entry.Replaces)
        && (stored.MeterBeforeM3, stored.MeterAfterM3) == (entry.MeterBeforeM3, entry.MeterAfterM3)
        && (entry.StartedAt is not { } start || (stored.StartedAt - start).Duration() <= Confirmations.ClockTolerance);
}
