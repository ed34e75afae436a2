using EstateWater.Data.Store;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Sets;

/// <summary>Reads the sets that stand now.</summary>
public sealed class SetsQuery(IDbContextFactory<EstateDb> databases, EstateSnapshots snapshots, TimeProvider clock)
{
    /// <summary>Older plans have no set that anyone still confirms.</summary>
    private static readonly TimeSpan LookBack = TimeSpan.FromDays(15);

    /// <summary>Reads them.</summary>
    public async Task<StandingSets> LoadAsync(CancellationToken cancellation = default)
    {
        var snapshot = await snapshots.GetAsync(cancellation);
        var now = TimeZoneInfo.ConvertTime(clock.GetUtcNow(), snapshot.TimeZone);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var since = now - LookBack;
        var plans = await db.PublishedPlans
            .AsNoTracking()
            .Include(p => p.Sets)
            .ThenInclude(s => s.Confirmations)
            .Where(p => p.PublishedAt >= since)
            .OrderBy(p => p.PublishedAt)
            .ThenBy(p => p.Id)
            .ToListAsync(cancellation);
        var last = plans.LastOrDefault(p => p.WithdrawnAt is null);
        var entries = plans.SelectMany(p => p.Sets).SelectMany(s => s.Confirmations).Select(c => c.EntryId).ToList();
        return new StandingSets
        {
            Lines = SetLines.Standing(plans, snapshot.Contents, await SetPhotos.AmongAsync(db, entries, cancellation)),
            PublishedBy = last?.PublishedBy ?? "",
            PublishedAt = TimeZoneInfo.ConvertTime(last?.PublishedAt ?? now, snapshot.TimeZone),
            Note = last?.Note,
            Now = now,
        };
    }
}
