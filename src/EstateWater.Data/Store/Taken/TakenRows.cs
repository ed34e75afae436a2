using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store.Taken;

/// <summary>The observations that an entry stands for: rows of the same tables that an estate folder fills.</summary>
/// <param name="zone">The estate's zone, which decides the day.</param>
internal sealed class TakenRows(TimeZoneInfo zone)
{
    /// <summary>The estate's day of an instant.</summary>
    public DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);

    public static IEnumerable<ChamberReading> Leaves(TakenContent content, string takenBy) => (content.Leaves?.Leaves ?? []).Select(leaf => new ChamberReading
    {
        BlockCode = content.BlockCode,
        TakenAt = leaf.TakenAt,
        Measure = content.Leaves!.Measure,
        Group = leaf.Group,
        TensionBar = leaf.TensionBar,
        Exposure = leaf.Exposure,
        BaggedMin = leaf.BaggedMin,
        DelayS = leaf.DelayS,
        Observer = takenBy,
        Note = content.Note,
    });

    public IEnumerable<SoilMoisture> Depths(TakenContent content) => (content.Soil?.Depths ?? []).Select(depth => new SoilMoisture
    {
        BlockCode = content.BlockCode,
        Date = DayOf(content.TakenAt),
        Tube = content.Soil!.Tube,
        DepthCm = depth.DepthCm,
        VwcM3PerM3 = depth.VwcM3PerM3,
        Count = depth.Count,
        StandardCount = depth.Count is null ? null : content.Soil.StandardCount,
    });

    public CanopyVisit? Visit(TakenContent content) => content.Canopy is not { } canopy ? null : new CanopyVisit
    {
        BlockCode = content.BlockCode,
        Date = DayOf(content.TakenAt),
        ShootLengthCm = canopy.ShootLengthCm,
        ShadedFraction = canopy.ShadedFraction,
        GrowingTipsPct = canopy.GrowingTipsPct,
        VisualStress = canopy.VisualStress,
        Note = content.Note,
    };

    public StageObservation? Stage(TakenContent content) => content.ElStage is not { } stage ? null : new StageObservation
    {
        BlockCode = content.BlockCode,
        Date = DayOf(content.TakenAt),
        ElStage = stage,
    };

    /// <summary>Adds what an entry stands for; gives the numbers of the rows.</summary>
    public async Task<int[]> AddAsync(EstateDb db, TakenContent content, string takenBy, CancellationToken cancellation)
    {
        object[] rows =
        [
            .. Leaves(content, takenBy),
            .. Depths(content),
            .. new object?[] { Visit(content), Stage(content) }.OfType<object>(),
        ];

        // One by one, so that leaves of one moment keep their order.
        foreach (var row in rows)
        {
            db.Add(row);
            await db.SaveChangesAsync(cancellation);
        }

        var ids = rows.Select(row => (int)db.Entry(row).Property("Id").CurrentValue!).ToArray();
        foreach (var row in rows)
        {
            db.Entry(row).State = EntityState.Detached;
        }

        return ids;
    }

    /// <summary>Takes away what an entry stood for.</summary>
    public static Task RemoveAsync(EstateDb db, TakenEntry entry, CancellationToken cancellation)
    {
        var ids = entry.RowIds;
        return entry.Kind switch
        {
            TakenKind.Chamber => db.ChamberReadings.Where(r => ids.Contains(r.Id)).ExecuteDeleteAsync(cancellation),
            TakenKind.Soil => db.SoilMoistures.Where(r => ids.Contains(r.Id)).ExecuteDeleteAsync(cancellation),
            TakenKind.Canopy => db.CanopyVisits.Where(r => ids.Contains(r.Id)).ExecuteDeleteAsync(cancellation),
            TakenKind.Stage => db.Stages.Where(r => ids.Contains(r.Id)).ExecuteDeleteAsync(cancellation),
            _ => throw new ArgumentOutOfRangeException(nameof(entry), entry.Kind, "A kind of the list."),
        };
    }

    /// <summary>What of that day is stored already although there can be only one, in words; null when there is nothing.</summary>
    /// <param name="db">The database.</param>
    /// <param name="content">What is to be stored.</param>
    /// <param name="replaced">Whose rows go when it is; null for a first.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<string?> TwiceAsync(EstateDb db, TakenContent content, TakenEntry? replaced, CancellationToken cancellation)
    {
        var day = DayOf(content.TakenAt);
        var (block, ours) = (content.BlockCode, replaced?.RowIds ?? []);
        switch (content.Kind)
        {
            case TakenKind.Canopy when await db.CanopyVisits.AnyAsync(v => v.BlockCode == block && v.Date == day && !ours.Contains(v.Id), cancellation):
                return $"A canopy visit of {block} on that day is stored already.";
            case TakenKind.Stage when await db.Stages.AnyAsync(s => s.BlockCode == block && s.Date == day && !ours.Contains(s.Id), cancellation):
                return $"A growth stage of {block} on that day is stored already.";
            case TakenKind.Soil:
                var tube = content.Soil!.Tube;
                var depths = content.Soil.Depths.Select(d => d.DepthCm).ToArray();
                return await db.SoilMoistures.AnyAsync(m => m.BlockCode == block && m.Date == day && m.Tube == tube && depths.Contains(m.DepthCm) && !ours.Contains(m.Id), cancellation)
                    ? $"Tube {tube} of {block} is stored already for that day."
                    : null;
            default:
                return null;
        }
    }
}
