using EstateWater.Data.Folder.Files;
using EstateWater.Data.Model;
using EstateWater.Data.Store.Taken;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>One import: what the folder says against what the database holds, table by table.</summary>
internal sealed class EstateImport
{
    // Enough rows a time to be quick, few enough that the change tracker stays small.
    private const int BatchSize = 2000;

    private readonly EstateDb db;
    private readonly bool write;
    private readonly CancellationToken cancellation;
    private readonly List<ImportedFile> files = [];

    private EstateImport(EstateDb db, bool write, CancellationToken cancellation)
    {
        this.db = db;
        this.write = write;
        this.cancellation = cancellation;
    }

    public static async Task<ImportResult> RunAsync(EstateDb db, EstateContents contents, bool write, ImportStamp? stamp, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(contents);

        // The transaction takes the write lock at once: nothing changes between the comparison and the writing.
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var import = new EstateImport(db, write, cancellation);
        await import.MergeAllAsync(await EstateStore.LoadAsync(db, cancellation), contents.InOrder());
        var result = new ImportResult(import.files);
        if (stamp is not null && !result.ChangedNothing)
        {
            db.Changes.Add(new ChangeRecord { At = stamp.At, By = stamp.By, Kind = ChangeKind.Import, What = Words(result) });
            await db.SaveChangesAsync(cancellation);
        }

        await transaction.CommitAsync(cancellation);
        return result;
    }

    private async Task MergeAllAsync(EstateContents? stored, EstateContents read)
    {
        var confirmed = (await db.SetConfirmations.Select(c => c.AppliedWaterId).ToListAsync(cancellation)).ToHashSet();

        // What irrigators have corrected does not come back from a folder that was written before.
        var corrected = (await db.SetConfirmations
            .Where(c => c.AppliedWaterId == null)
            .Join(db.PublishedSets, c => c.SetId, s => s.Id, (c, s) => new { s.ValveCode, c.StartedAt })
            .ToListAsync(cancellation)).Select(c => (c.ValveCode, c.StartedAt)).ToHashSet();
        var taken = await TakenMarks.LoadAsync(db, cancellation);
        await Merge(EstateFile.Name, stored is null ? [] : [stored.Estate], [read.Estate], e => e.Id, (e, _) => e with { Id = 1 });
        await Merge(StationsFile.Name, stored?.Stations, read.Stations, s => s.Code, (s, _) => s);
        await Merge(WaterSourcesFile.Name, stored?.Sources, read.Sources, s => s.Code, (s, _) => s);
        await Merge(ValvesFile.Name, stored?.Valves, read.Valves, v => v.Code, (v, _) => v);
        await Merge(BlocksFile.Name, stored?.Blocks, read.Blocks, b => b.Code, (b, _) => b);
        await Merge(StagesFile.Name, stored?.Stages, read.Stages, s => (s.BlockCode, s.Date), (s, old) => s with { Id = old?.Id ?? 0 }, old => taken.Stands(TakenKind.Stage, old.Id), taken.IsGone);
        await Merge(
            TargetsFile.Name, stored?.Targets, read.Targets,
            t => (t.BlockCode, t.Fruit, t.Measure, t.FromElStage, t.ToElStage), (t, old) => t with { Id = old?.Id ?? 0 });
        await Merge(WeatherDailyFile.Name, stored?.Weather, read.Weather, w => (w.StationCode, w.Date), (w, old) => w with { Id = old?.Id ?? 0 });
        await Merge(
            ForecastDailyFile.Name, stored?.Forecasts, read.Forecasts,
            f => (f.StationCode, f.IssuedAt, f.Member, f.Date), (f, old) => f with { Id = old?.Id ?? 0 });
        await Merge(
            ChamberReadingsFile.Name, stored?.ChamberReadings, read.ChamberReadings,
            r => (r.BlockCode, r.TakenAt, r.Measure, r.Group, r.Vine, r.Exposure), (r, old) => r with { Id = old?.Id ?? 0 }, old => taken.Stands(TakenKind.Chamber, old.Id), taken.IsGone);
        await Merge(
            SoilMoistureFile.Name, stored?.SoilMoistures, read.SoilMoistures,
            m => (m.BlockCode, m.Date, m.Tube, m.DepthCm), (m, old) => m with { Id = old?.Id ?? 0 }, old => taken.Stands(TakenKind.Soil, old.Id), taken.IsGone);
        await Merge(
            ProbeCalibrationFile.Name, stored?.ProbeCalibrations, read.ProbeCalibrations,
            c => c.BlockCode ?? "", (c, old) => c with { Id = old?.Id ?? 0 });
        await Merge(CanopyFile.Name, stored?.CanopyVisits, read.CanopyVisits, v => (v.BlockCode, v.Date), (v, old) => v with { Id = old?.Id ?? 0 }, old => taken.Stands(TakenKind.Canopy, old.Id), taken.IsGone);
        await Merge(
            AppliedWaterFile.Name, stored?.AppliedWaters, read.AppliedWaters,
            w => (w.ValveCode, w.StartedAt), (w, old) => w with { Id = old?.Id ?? 0 }, isKept: old => confirmed.Contains(old.Id), isGone: w => corrected.Contains((w.ValveCode, w.StartedAt)));
    }

    private static string Words(ImportResult result) => FormattableString.Invariant(
        $"Imported a folder: {result.Files.Sum(f => f.New)} rows new, {result.Files.Sum(f => f.Changed)} changed");

    private async Task Merge<T, TKey>(
        string file, IReadOnlyList<T>? stored, IReadOnlyList<T> read, Func<T, TKey> key, Func<T, T?, T> inPlaceOf, Func<T, bool>? isKept = null, Func<T, bool>? isGone = null)
        where T : class
        where TKey : notnull
    {
        var (added, changed, unchanged, kept) = (new List<T>(), new List<T>(), 0, 0);
        var old = Keyed(stored ?? [], key).ToDictionary(r => r.Key, r => r.Row);
        foreach (var (rowKey, row) in Keyed(read, key))
        {
            var match = old.GetValueOrDefault(rowKey);
            var stays = inPlaceOf(row, match);
            if (match is null && isGone?.Invoke(row) == true)
            {
                kept++;
            }
            else if (match is null)
            {
                added.Add(stays);
            }
            else if (stays.Equals(match))
            {
                unchanged++;
            }
            else if (isKept?.Invoke(match) == true)
            {
                kept++;
            }
            else
            {
                changed.Add(stays);
            }
        }

        await SaveAsync(added, rows => db.AddRange(rows));
        await SaveAsync(changed, rows => db.UpdateRange(rows));
        files.Add(new(file, added.Count, changed.Count, unchanged, kept));
    }

    // Leaves without a vine's number share a key: they are told apart by their place among their equals.
    private static IEnumerable<((TKey, int) Key, T Row)> Keyed<T, TKey>(IReadOnlyList<T> rows, Func<T, TKey> key)
        where TKey : notnull
    {
        var counts = new Dictionary<TKey, int>();
        foreach (var row in rows)
        {
            var rowKey = key(row);
            var count = counts.GetValueOrDefault(rowKey);
            counts[rowKey] = count + 1;
            yield return ((rowKey, count), row);
        }
    }

    private async Task SaveAsync<T>(List<T> rows, Action<T[]> track)
        where T : class
    {
        if (!write)
        {
            return;
        }

        foreach (var batch in rows.Chunk(BatchSize))
        {
            track(batch);
            await db.SaveChangesAsync(cancellation);
            db.ChangeTracker.Clear();
        }
    }
}
