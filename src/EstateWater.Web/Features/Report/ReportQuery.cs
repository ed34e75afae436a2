using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Report;

/// <summary>Reads the plans whose sets a week may have run: the shared snapshot keeps only the last.</summary>
public sealed class ReportQuery(IDbContextFactory<EstateDb> databases)
{
    /// <summary>A plan looks ten days ahead; older ones have no set in the past week.</summary>
    private static readonly TimeSpan LookBack = TimeSpan.FromDays(40);

    /// <summary>Plans in order of publication, those taken back too.</summary>
    /// <param name="snapshot">What the report shows.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<IReadOnlyList<PublishedPlan>> PlansAsync(EstateSnapshot snapshot, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var since = snapshot.AsOf - LookBack;
        return await db.PublishedPlans
            .AsNoTracking()
            .Include(plan => plan.Sets)
            .ThenInclude(set => set.Confirmations)
            .AsSplitQuery()
            .Where(plan => plan.PublishedAt >= since)
            .OrderBy(plan => plan.PublishedAt)
            .ThenBy(plan => plan.Id)
            .ToListAsync(cancellation);
    }
}
