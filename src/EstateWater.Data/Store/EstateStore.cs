using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>The whole estate into the database and out of it.</summary>
public static class EstateStore
{
    /// <summary>Everything the database knows of the estate, in order, instants on the estate's clock; <see langword="null"/> when it is empty.</summary>
    public static async Task<EstateContents?> LoadAsync(EstateDb db, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        if (await db.Estates.AsNoTracking().SingleOrDefaultAsync(cancellation) is not { } estate)
        {
            return null;
        }

        var zone = TimeZoneInfo.FindSystemTimeZoneById(estate.TimeZone);
        DateTimeOffset Local(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, zone);
        return new EstateContents
        {
            Estate = estate,
            Stations = await All(db.Stations),
            Sources = await All(db.Sources),
            Valves = await All(db.Valves),
            Blocks = await All(db.Blocks),
            Stages = await All(db.Stages),
            Targets = await All(db.Targets),
            Weather = await All(db.Weather),
            Forecasts = [.. (await All(db.Forecasts)).Select(f => f with { IssuedAt = Local(f.IssuedAt) })],
            ChamberReadings = [.. (await All(db.ChamberReadings)).Select(r => r with { TakenAt = Local(r.TakenAt) })],
            SoilMoistures = await All(db.SoilMoistures),
            ProbeCalibrations = await All(db.ProbeCalibrations),
            CanopyVisits = await All(db.CanopyVisits),
            AppliedWaters = [.. (await All(db.AppliedWaters)).Select(w => w with { StartedAt = Local(w.StartedAt) })],
        }.InOrder();

        Task<List<T>> All<T>(DbSet<T> rows)
            where T : class => rows.AsNoTracking().ToListAsync(cancellation);
    }

    /// <summary>
    /// Brings an estate in, all of it or nothing. Rows are known by what they are about (a station's day, a tube's depth):
    /// a row of the same key is replaced, none is removed, and a second import of the same estate changes nothing.
    /// </summary>
    public static Task<ImportResult> ImportAsync(EstateDb db, EstateContents contents, CancellationToken cancellation = default) =>
        EstateImport.RunAsync(db, contents, write: true, null, cancellation);

    /// <summary><see cref="ImportAsync(EstateDb, EstateContents, CancellationToken)"/>, with a line in the record of changes when anything changed.</summary>
    /// <param name="db">The database.</param>
    /// <param name="contents">What the folder holds.</param>
    /// <param name="stamp">Who brings it in, and when.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static Task<ImportResult> ImportAsync(EstateDb db, EstateContents contents, ImportStamp stamp, CancellationToken cancellation = default) =>
        EstateImport.RunAsync(db, contents, write: true, stamp, cancellation);

    /// <summary>What <see cref="ImportAsync"/> would do; writes nothing.</summary>
    public static Task<ImportResult> CompareAsync(EstateDb db, EstateContents contents, CancellationToken cancellation = default) =>
        EstateImport.RunAsync(db, contents, write: false, null, cancellation);
}
