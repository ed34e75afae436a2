using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>Photos that irrigators send with their entries, kept in the database and so in its backups.</summary>
public static class SetPhotos
{
    /// <summary>Stores the photo of an entry once.</summary>
    /// <param name="db">The database.</param>
    /// <param name="entryId">The entry, stored before.</param>
    /// <param name="jpeg">The picture, checked.</param>
    /// <param name="now">The server's clock.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static async Task<PhotoStatus> AddAsync(EstateDb db, Guid entryId, byte[] jpeg, DateTimeOffset now, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(jpeg);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await db.SetConfirmations.AsNoTracking().SingleOrDefaultAsync(c => c.EntryId == entryId, cancellation) is not { } entry)
        {
            return PhotoStatus.UnknownEntry;
        }

        if (await db.SetPhotos.AsNoTracking().SingleOrDefaultAsync(p => p.ConfirmationId == entry.Id, cancellation) is { } stored)
        {
            return stored.Jpeg.AsSpan().SequenceEqual(jpeg) ? PhotoStatus.StoredBefore : PhotoStatus.Conflict;
        }

        db.SetPhotos.Add(new SetPhoto { ConfirmationId = entry.Id, Jpeg = jpeg, ReceivedAt = now });
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return PhotoStatus.Stored;
    }

    /// <summary>The photo of an entry; <see langword="null"/> when there is none.</summary>
    public static async Task<byte[]?> FindAsync(EstateDb db, Guid entryId, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        return await db.SetConfirmations
            .Where(c => c.EntryId == entryId)
            .Join(db.SetPhotos, c => c.Id, p => p.ConfirmationId, (_, photo) => photo.Jpeg)
            .SingleOrDefaultAsync(cancellation);
    }

    /// <summary>Which of these entries have a photo.</summary>
    public static async Task<IReadOnlySet<Guid>> AmongAsync(EstateDb db, IReadOnlyCollection<Guid> entryIds, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        return (await db.SetConfirmations
            .Where(c => entryIds.Contains(c.EntryId))
            .Join(db.SetPhotos, c => c.Id, p => p.ConfirmationId, (entry, _) => entry.EntryId)
            .ToListAsync(cancellation)).ToHashSet();
    }
}

/// <summary>What became of a photo.</summary>
public enum PhotoStatus
{
    /// <summary>Stored now.</summary>
    Stored,

    /// <summary>The same photo was stored before; nothing changed.</summary>
    StoredBefore,

    /// <summary>The entry has another photo; nothing changed.</summary>
    Conflict,

    /// <summary>There is no such entry.</summary>
    UnknownEntry,
}
