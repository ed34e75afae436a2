using EstateWater.Web.State;

namespace EstateWater.Web.Features.Sets;

/// <summary>Reads the sets that stand now.</summary>
public sealed class SetsQuery(EstateSnapshots snapshots, TimeProvider clock)
{
    /// <summary>Reads them.</summary>
    public async Task<StandingSets> LoadAsync(CancellationToken cancellation = default)
    {
        var snapshot = await snapshots.GetAsync(cancellation);
        return new StandingSets { Lines = [], Now = TimeZoneInfo.ConvertTime(clock.GetUtcNow(), snapshot.TimeZone) };
    }
}
