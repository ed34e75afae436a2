using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store.Taken;

/// <summary>What people have taken or taken back in the program itself: a folder that was written before does not undo it.</summary>
internal sealed class TakenMarks
{
    private readonly ILookup<TakenKind, int> standing;
    private readonly HashSet<ChamberReading> goneLeaves;
    private readonly HashSet<(string, DateOnly, string, double)> goneDepths;
    private readonly HashSet<(TakenKind, string, DateOnly)> goneDays;

    private TakenMarks(IReadOnlyList<TakenEntry> entries, TakenRows rows)
    {
        var replaced = entries.Select(e => e.Replaces).OfType<Guid>().ToHashSet();
        standing = entries.SelectMany(e => e.RowIds.Select(id => (e.Kind, id))).ToLookup(r => r.Kind, r => r.id);
        var gone = entries.Where(e => !e.IsWithdrawal && replaced.Contains(e.EntryId)).Select(e => TakenContent.Parse(e.Content)).ToList();
        goneLeaves = [.. gone.SelectMany(c => TakenRows.Leaves(c, "")).Select(Key)];
        goneDepths = [.. gone.SelectMany(rows.Depths).Select(m => (m.BlockCode, m.Date, m.Tube, m.DepthCm))];
        goneDays = [.. gone.Select(c => (c.Kind, c.BlockCode, rows.DayOf(c.TakenAt)))];
    }

    public static async Task<TakenMarks> LoadAsync(EstateDb db, CancellationToken cancellation) => new(
        await db.TakenEntries.AsNoTracking().ToListAsync(cancellation),
        new TakenRows(await ChangeWords.ZoneAsync(db, cancellation)));

    /// <summary>Whether a row stands for an entry that counts.</summary>
    public bool Stands(TakenKind kind, int rowId) => standing[kind].Contains(rowId);

    public bool IsGone(ChamberReading reading) => goneLeaves.Contains(Key(reading));

    public bool IsGone(SoilMoisture moisture) => goneDepths.Contains((moisture.BlockCode, moisture.Date, moisture.Tube, moisture.DepthCm));

    public bool IsGone(CanopyVisit visit) => goneDays.Contains((TakenKind.Canopy, visit.BlockCode, visit.Date));

    public bool IsGone(StageObservation stage) => goneDays.Contains((TakenKind.Stage, stage.BlockCode, stage.Date));

    // What makes a leaf that leaf: where, when, which, and what the gauge showed.
    private static ChamberReading Key(ChamberReading r) => new()
    {
        BlockCode = r.BlockCode,
        TakenAt = r.TakenAt.ToUniversalTime(),
        Measure = r.Measure,
        Group = r.Group,
        Exposure = r.Exposure,
        TensionBar = r.TensionBar,
    };
}
