using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Data.Store.Taken;
using EstateWater.Planning.Rounds;
using EstateWater.Web.Features.Rounds;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Taking;

/// <summary>Reads what the technician's page shows.</summary>
public sealed class ReadingsQuery(IDbContextFactory<EstateDb> databases, EstateSnapshots snapshots, EstateRounds rounds, TimeProvider clock)
{
    /// <summary>Reads it.</summary>
    public async Task<ReadingsView> LoadAsync(CancellationToken cancellation = default)
    {
        var snapshot = await snapshots.GetSettledAsync(cancellation);
        var now = TimeZoneInfo.ConvertTime(clock.GetUtcNow(), snapshot.TimeZone);
        var round = snapshot.HasEstate ? await rounds.TodayAsync(snapshot, cancellation) : null;
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var midnight = now - now.TimeOfDay;
        var taken = await TakenEntries.StandingSinceAsync(db, midnight, cancellation);
        return new ReadingsView
        {
            HasEstate = snapshot.HasEstate,
            Now = now,
            Round = round,
            Blocks = FieldBlock.Of(snapshot, round),
            Taken = [.. taken.Select(e => new TakenLine(e.EntryId, TakenContent.Parse(e.Content), e.TakenBy, TimeZoneInfo.ConvertTime(TakenContent.Parse(e.Content).TakenAt, snapshot.TimeZone)))],
        };
    }
}

/// <summary>What the technician's page shows.</summary>
public sealed record ReadingsView
{
    /// <summary>False while nothing has been imported.</summary>
    public required bool HasEstate { get; init; }

    /// <summary>The moment it was read, estate time.</summary>
    public required DateTimeOffset Now { get; init; }

    /// <summary>Today's round; null while there is no plan to make one from.</summary>
    public required RoundPlan? Round { get; init; }

    /// <summary>Every block, by code.</summary>
    public required IReadOnlyList<FieldBlock> Blocks { get; init; }

    /// <summary>What was stored today, oldest first.</summary>
    public required IReadOnlyList<TakenLine> Taken { get; init; }

    /// <summary>The block of a code.</summary>
    public FieldBlock Block(string code) => Blocks.First(b => b.Code == code);
}

/// <summary>An entry that counts.</summary>
/// <param name="EntryId">Its id.</param>
/// <param name="Content">What it tells.</param>
/// <param name="By">Who took it.</param>
/// <param name="At">When, estate time.</param>
public sealed record TakenLine(Guid EntryId, TakenContent Content, string By, DateTimeOffset At);
