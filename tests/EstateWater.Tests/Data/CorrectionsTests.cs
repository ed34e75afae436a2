using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Tests.Data;

public sealed class CorrectionsTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Start = new(2024, 11, 14, 20, 0, 0, TimeSpan.FromHours(2));
    private static readonly DateTimeOffset Morning = Start.AddHours(11);
    private readonly TemporaryFolder folder = new();
    private EstateDb db = null!;
    private PublishedPlan plan = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        using var small = new SmallEstate();
        db = DatabaseSetup.Open(folder.File("estate.db"));
        await DatabaseSetup.MigrateAsync(db, Stop);
        await EstateStore.ImportAsync(db, small.Read().Contents!, new ImportStamp("Command line", Start.AddDays(-1)), Stop);
        plan = await PublishAsync(Start.AddHours(-10), Start);
        db.ChangeTracker.Clear();
    }

    public async ValueTask DisposeAsync()
    {
        await db.DisposeAsync();
        SqliteConnection.ClearAllPools();
        folder.Dispose();
    }

    [Fact]
    public async Task A_correction_counts_in_place_of_the_entry_it_names_and_both_stay()
    {
        var first = Entry(3.5);
        await Confirm(first);
        var second = Entry(2) with { Replaces = first.EntryId, StartedAt = Start.AddHours(1), ConfirmedBy = "Carla" };
        Assert.Equal(ConfirmationStatus.Stored, (await Confirm(second)).Status);
        Assert.Equal(ConfirmationStatus.Stored, (await Confirm(Entry(2.5) with { Replaces = second.EntryId })).Status);

        Assert.Equal([3.5, 2, 2.5], await db.SetConfirmations.OrderBy(c => c.Id).Select(c => c.Hours).ToListAsync(Stop));
        var water = Assert.Single(await Water());
        Assert.Equal((2.5, Start.AddHours(1)), (water.Hours, water.StartedAt));
    }

    [Fact]
    public async Task A_correction_sent_twice_is_stored_once()
    {
        var first = Entry(3.5);
        await Confirm(first);
        var second = Entry(2) with { Replaces = first.EntryId };
        await Confirm(second);
        Assert.Equal(ConfirmationStatus.StoredBefore, (await Confirm(second)).Status);
        Assert.Equal(2, await db.SetConfirmations.CountAsync(Stop));
        Assert.Equal(2, Assert.Single(await Water()).Hours);
    }

    [Fact]
    public async Task Of_two_corrections_of_one_entry_the_second_is_told_of_the_first()
    {
        var first = Entry(3.5);
        await Confirm(first);
        await Confirm(Entry(2) with { Replaces = first.EntryId, ConfirmedBy = "Carla" });
        var other = await Confirm(Entry(1) with { Replaces = first.EntryId });
        Assert.Equal(ConfirmationStatus.CorrectedBefore, other.Status);
        Assert.Equal("Carla corrected this already: V1 of Thu 14 Nov 20:00: 2 h.", other.Problem);
    }

    [Fact]
    public async Task Corrected_to_could_not_run_there_is_no_water_and_an_older_folder_does_not_bring_it_back()
    {
        var first = Entry(3.5);
        await Confirm(first);
        var exported = (await EstateStore.LoadAsync(db, Stop))!;
        await Confirm(Entry(0) with { Replaces = first.EntryId, NotRun = NotRunReason.NoPower });
        Assert.Empty(await Water());

        db.ChangeTracker.Clear();
        var result = await EstateStore.ImportAsync(db, exported, Stop);
        Assert.True(result.ChangedNothing);
        Assert.Empty(await Water());
    }

    [Fact]
    public async Task Taking_a_correction_back_is_a_correction_too()
    {
        var first = Entry(3.5);
        await Confirm(first);
        var second = Entry(0) with { Replaces = first.EntryId, NotRun = NotRunReason.PumpDown };
        await Confirm(second);
        Assert.Null(await Confirmations.UndoCorrectionAsync(db, second.EntryId, "Anna", Morning, Stop));
        Assert.Equal(3.5, Assert.Single(await Water()).Hours);
        Assert.Equal(3, await db.SetConfirmations.CountAsync(Stop));
        Assert.Contains("corrected this already", await Confirmations.UndoCorrectionAsync(db, second.EntryId, "Anna", Morning, Stop), StringComparison.Ordinal);
        Assert.Equal("This entry corrects none.", await Confirmations.UndoCorrectionAsync(db, first.EntryId, "Anna", Morning, Stop));
    }

    [Fact]
    public async Task Water_counts_from_when_the_valve_was_opened()
    {
        // Run in the afternoon although planned for the night: known, and counted, before the planned start.
        var early = await Confirmations.ConfirmAsync(db, Entry(3) with { StartedAt = Start.AddHours(-4) }, Start.AddHours(-1), Stop);
        Assert.Equal(ConfirmationStatus.Stored, early.Status);
        Assert.Equal(Start.AddHours(-4), Assert.Single(await db.AppliedWaters.Where(w => w.StartedAt >= Start.AddHours(-5)).ToListAsync(Stop)).StartedAt);
    }

    [Fact]
    public async Task Water_that_would_begin_later_than_now_is_refused_and_a_fast_phone_clock_is_not()
    {
        var refused = await Confirmations.ConfirmAsync(db, Entry(3), Start.AddHours(-1), Stop);
        Assert.Equal(ConfirmationStatus.NotYet, refused.Status);
        Assert.StartsWith("V1 would open at Thu 14 Nov 20:00, which is still ahead.", refused.Problem, StringComparison.Ordinal);
        Assert.Empty(await db.SetConfirmations.ToListAsync(Stop));

        var now = Start.AddMinutes(-10);
        Assert.Equal(ConfirmationStatus.Stored, (await Confirmations.ConfirmAsync(db, Entry(3), now, Stop)).Status);
        Assert.Equal(now, Assert.Single(await db.AppliedWaters.Where(w => w.ConfirmedBy == "Ben").ToListAsync(Stop)).StartedAt);
    }

    [Fact]
    public async Task Water_that_overlaps_what_is_recorded_of_the_valve_is_not_counted_again()
    {
        db.AppliedWaters.Add(new AppliedWater { ValveCode = "V1", StartedAt = Start.AddMinutes(-20), Hours = 3.5 });
        await db.SaveChangesAsync(Stop);
        var result = await Confirm(Entry(3.5));
        Assert.Equal((ConfirmationStatus.Conflict, "Water through V1 from Thu 14 Nov 19:40 is recorded already."), (result.Status, result.Problem));
        Assert.Equal(ConfirmationStatus.Stored, (await Confirm(Entry(3.5) with { StartedAt = Start.AddHours(3) })).Status);
    }

    [Fact]
    public async Task Two_meter_readings_are_the_water_used()
    {
        await Confirm(Entry(3) with { MeterBeforeM3 = 1200.5, MeterAfterM3 = 1260 });
        Assert.Equal(59.5, Assert.Single(await Water()).MeterM3);
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Confirm(Entry(3) with { MeterBeforeM3 = 10, MeterAfterM3 = 9 }));
    }

    [Fact]
    public async Task The_record_says_who_when_what_and_what_before()
    {
        var first = Entry(3.5);
        await Confirm(first);
        await Confirm(Entry(2) with { Replaces = first.EntryId, ConfirmedBy = "Carla", Note = "read the meter wrong" });
        var changes = await db.Changes.AsNoTracking().OrderBy(c => c.Id).ToListAsync(Stop);
        Assert.Equal([ChangeKind.Import, ChangeKind.Publication, ChangeKind.Confirmation, ChangeKind.Correction], changes.Select(c => c.Kind));
        Assert.Equal(["Command line", "Anna", "Ben", "Carla"], changes.Select(c => c.By));
        Assert.Equal(("V1 of Thu 14 Nov 20:00: 2 h (read the meter wrong)", "V1 of Thu 14 Nov 20:00: 3.5 h", Morning), (changes[3].What, changes[3].Before, changes[3].At));
        Assert.Equal("Published 1 set, 4 h", changes[1].What);
    }

    [Fact]
    public async Task A_publication_is_taken_back_until_its_first_set_begins()
    {
        var later = await PublishAsync(Start.AddHours(-5), Start.AddHours(1));
        Assert.Contains("only the last", await PublishedPlans.WithdrawAsync(db, plan.Id, "Anna", Start.AddHours(-4), Stop), StringComparison.Ordinal);
        Assert.Contains("has begun", await PublishedPlans.WithdrawAsync(db, later.Id, "Anna", Start.AddHours(2), Stop), StringComparison.Ordinal);
        Assert.Null(await PublishedPlans.WithdrawAsync(db, later.Id, "Anna", Start.AddHours(-4), Stop));
        Assert.Equal(plan.Id, (await PublishedPlans.Standing(db).FirstAsync(Stop)).Id);
        Assert.Equal(2, await db.PublishedPlans.CountAsync(Stop));
        Assert.StartsWith("Took the publication back: the plan of Thu 14 Nov 10:00 by Anna stands again", (await db.Changes.OrderBy(c => c.Id).LastAsync(Stop)).What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_is_stored_once_with_its_entry()
    {
        var entry = Entry(3);
        Assert.Equal(PhotoStatus.UnknownEntry, await SetPhotos.AddAsync(db, entry.EntryId, [1, 2], Morning, Stop));
        await Confirm(entry);
        Assert.Equal(PhotoStatus.Stored, await SetPhotos.AddAsync(db, entry.EntryId, [1, 2], Morning, Stop));
        Assert.Equal(PhotoStatus.StoredBefore, await SetPhotos.AddAsync(db, entry.EntryId, [1, 2], Morning, Stop));
        Assert.Equal(PhotoStatus.Conflict, await SetPhotos.AddAsync(db, entry.EntryId, [1, 3], Morning, Stop));
        Assert.Equal([1, 2], await SetPhotos.FindAsync(db, entry.EntryId, Stop));
        Assert.Equal([entry.EntryId], await SetPhotos.AmongAsync(db, [entry.EntryId, Guid.NewGuid()], Stop));
    }

    private async Task<PublishedPlan> PublishAsync(DateTimeOffset at, DateTimeOffset start)
    {
        var set = new PublishedSet { ValveCode = "V1", SourceCode = "dam", Start = start, End = start.AddHours(4), Hours = 4, FlowM3PerH = 20 };
        return await PublishedPlans.PublishAsync(db, at, "{}", [set], "Anna", null, at, Stop);
    }

    private Task<ConfirmationResult> Confirm(ConfirmationEntry entry) => Confirmations.ConfirmAsync(db, entry, Morning, Stop);

    private Task<List<AppliedWater>> Water() => db.AppliedWaters.AsNoTracking().Where(w => w.StartedAt >= Start).ToListAsync(Stop);

    private ConfirmationEntry Entry(double hours) => new(Guid.NewGuid(), plan.Sets[0].Id, hours, null, "Ben", null, Morning);
}
