using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Data.Store.Taken;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Changes;

/// <summary>Reads the record of changes, and takes back what can be taken back.</summary>
public sealed class ChangesQuery(IDbContextFactory<EstateDb> databases, EstateSnapshots snapshots, TimeProvider clock)
{
    /// <summary>A page shows so many; older ones by the filter of their moment.</summary>
    public const int PageLength = 100;

    /// <summary>The newest changes first.</summary>
    /// <param name="filter">Which.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<ChangePage> LoadAsync(ChangeFilter filter, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(filter);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var all = db.Changes.AsNoTracking();
        var found = filter.Apply(all).OrderByDescending(c => c.Id);
        var rows = await found.Take(PageLength + 1).ToListAsync(cancellation);
        var standing = await PublishedPlans.Standing(db).AsNoTracking().Include(p => p.Sets).ThenInclude(s => s.Confirmations).AsSplitQuery().FirstOrDefaultAsync(cancellation);
        var replaced = await db.SetConfirmations.Where(c => c.Replaces != null).Select(c => c.Replaces!.Value)
            .Concat(db.TakenEntries.Where(e => e.Replaces != null).Select(e => e.Replaces!.Value))
            .ToListAsync(cancellation);
        var told = await ToldChanges.OfAsync(db, [.. rows.Take(PageLength)], cancellation);
        return new ChangePage
        {
            Rows = [.. told.Select(line => UndoOf(line, standing, replaced))],
            Older = rows.Count > PageLength ? rows[PageLength - 1].Id : null,
            People = await all.Select(c => c.By).Distinct().OrderBy(by => by).ToListAsync(cancellation),
        };
    }

    /// <summary>Takes a change back as a change of its own. Gives why it cannot be; null when it was done.</summary>
    public async Task<string?> UndoAsync(int changeId, string by, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var change = await db.Changes.AsNoTracking().SingleOrDefaultAsync(c => c.Id == changeId, cancellation);
        var problem = change switch
        {
            { Kind: ChangeKind.Publication, PlanId: { } plan } => await PublishedPlans.WithdrawAsync(db, plan, by, clock.GetUtcNow(), cancellation),
            { Kind: ChangeKind.Correction, EntryId: { } entry } => await Confirmations.UndoCorrectionAsync(db, entry, by, clock.GetUtcNow(), cancellation),
            { Kind: ChangeKind.Reading, EntryId: { } entry } => await TakenEntries.UndoAsync(db, entry, by, clock.GetUtcNow(), cancellation),
            _ => "This change cannot be taken back.",
        };
        if (problem is null)
        {
            snapshots.Invalidate($"{by} took a {change!.Kind.ToString().ToLowerInvariant()} back.");
        }

        return problem;
    }

    private ChangeLine UndoOf(ToldChange line, PublishedPlan? standing, List<Guid> replaced) => line.Change switch
    {
        { Kind: ChangeKind.Publication, PlanId: { } id } when id != standing?.Id => new(line, null, "Another plan stands"),
        { Kind: ChangeKind.Publication, PlanId: not null } when standing!.Sets.Exists(s => s.Confirmations.Count > 0) => new(line, null, "A set of it was confirmed: publish anew"),
        { Kind: ChangeKind.Publication, PlanId: not null } when standing!.Sets.Exists(s => s.Start <= clock.GetUtcNow()) => new(line, null, "Its first set has begun: publish anew"),
        { Kind: ChangeKind.Publication, PlanId: not null } => new(line, "Take this publication back", null),
        { Kind: ChangeKind.Correction or ChangeKind.Reading, EntryId: { } entry } when replaced.Contains(entry) => new(line, null, "Changed again since"),
        { Kind: ChangeKind.Correction, EntryId: not null } => new(line, "Take this correction back", null),
        { Kind: ChangeKind.Reading, EntryId: not null } => new(line, "Take this reading back", null),
        _ => new(line, null, null),
    };
}

/// <summary>What a page of the record shows.</summary>
public sealed record ChangePage
{
    /// <summary>The newest first.</summary>
    public required IReadOnlyList<ChangeLine> Rows { get; init; }

    /// <summary>Below this number there are older ones; null when all are shown.</summary>
    public int? Older { get; init; }

    /// <summary>Everyone who changed anything.</summary>
    public required IReadOnlyList<string> People { get; init; }
}

/// <summary>A change and what can be done about it.</summary>
/// <param name="Told">The change, for any reader.</param>
/// <param name="Undo">The words of the button that takes it back; null where that is not safe.</param>
/// <param name="WhyNot">Why it can no longer be taken back; null where it can, and for what never could.</param>
public sealed record ChangeLine(ToldChange Told, string? Undo, string? WhyNot)
{
    /// <summary>The change as it is kept.</summary>
    public ChangeRecord Change => Told.Change;
}
