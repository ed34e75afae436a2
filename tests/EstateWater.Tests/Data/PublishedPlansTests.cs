using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Tests.Data;

public sealed class PublishedPlansTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Start = new(2024, 11, 14, 20, 0, 0, TimeSpan.FromHours(2));
    private readonly TemporaryFolder folder = new();
    private EstateDb db = null!;
    private PublishedPlan plan = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        using var small = new SmallEstate();
        db = DatabaseSetup.Open(folder.File("estate.db"));
        await DatabaseSetup.MigrateAsync(db, Stop);
        await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);
        plan = await PublishedPlans.PublishAsync(db, Start.AddHours(-14), """{"as_of": "2024-11-14T06:00:00+02:00"}""", [Set("V1"), Set("V2")], "Anna", "mind the leak", Start.AddHours(-10), Stop);
        db.ChangeTracker.Clear();
    }

    public async ValueTask DisposeAsync()
    {
        await db.DisposeAsync();
        SqliteConnection.ClearAllPools();
        folder.Dispose();
    }

    [Fact]
    public async Task A_published_plan_is_kept_with_its_sets()
    {
        var stored = await db.PublishedPlans.Include(p => p.Sets).SingleAsync(Stop);

        Assert.Equal(("Anna", "mind the leak", Start.AddHours(-14), plan.PlanJson), (stored.PublishedBy, stored.Note, stored.AsOf, stored.PlanJson));
        Assert.Equal(["V1", "V2"], stored.Sets.Select(s => s.ValveCode).Order());
        Assert.All(stored.Sets, s => Assert.Equal((Start, 4.0, 20.0), (s.Start, s.Hours, s.FlowM3PerH)));
    }

    [Fact]
    public async Task A_confirmation_is_applied_water()
    {
        var result = await Confirmations.ConfirmAsync(db, Entry(), Start.AddHours(12), Stop);

        var water = await db.AppliedWaters.SingleAsync(w => w.StartedAt == Start, Stop);
        Assert.Equal(ConfirmationStatus.Stored, result.Status);
        Assert.Equal(("V1", 3.5, 70.0, "Ben", "late"), (water.ValveCode, water.Hours, water.MeterM3, water.ConfirmedBy, water.Note));
        Assert.Equal((water.Id, Start.AddHours(12)), (result.Receipt!.AppliedWaterId, result.Receipt.ReceivedAt));
    }

    [Fact]
    public async Task Zero_hours_are_confirmed_and_are_no_water()
    {
        var result = await Confirmations.ConfirmAsync(db, Entry() with { Hours = 0, MeterM3 = null }, Start, Stop);

        Assert.Equal((ConfirmationStatus.Stored, null), (result.Status, result.Receipt!.AppliedWaterId));
        Assert.False(await db.AppliedWaters.AnyAsync(w => w.StartedAt == Start, Stop));
    }

    [Fact]
    public async Task The_same_entry_again_gets_the_stored_receipt()
    {
        var entry = Entry();
        var first = await Confirmations.ConfirmAsync(db, entry, Start, Stop);

        var again = await Confirmations.ConfirmAsync(db, entry, Start.AddDays(1), Stop);

        Assert.Equal((ConfirmationStatus.StoredBefore, first.Receipt!.Id, Start), (again.Status, again.Receipt!.Id, again.Receipt.ReceivedAt));
        Assert.Equal(1, await db.AppliedWaters.CountAsync(w => w.StartedAt == Start, Stop));
    }

    [Fact]
    public async Task An_entry_id_with_other_content_is_a_conflict()
    {
        var entry = Entry();
        await Confirmations.ConfirmAsync(db, entry, Start, Stop);

        var other = await Confirmations.ConfirmAsync(db, entry with { Hours = 1 }, Start, Stop);

        Assert.Equal((ConfirmationStatus.Conflict, 3.5), (other.Status, other.Receipt!.Hours));
        Assert.Equal(3.5, (await db.AppliedWaters.SingleAsync(w => w.StartedAt == Start, Stop)).Hours);
    }

    [Fact]
    public async Task A_set_is_confirmed_by_one_person()
    {
        await Confirmations.ConfirmAsync(db, Entry(), Start, Stop);

        var other = await Confirmations.ConfirmAsync(db, Entry() with { ConfirmedBy = "Carla" }, Start, Stop);

        Assert.Equal(ConfirmationStatus.Conflict, other.Status);
        Assert.Equal("Ben confirmed this set already.", other.Problem);
    }

    [Fact]
    public async Task The_same_water_under_a_newer_plan_is_not_counted_twice()
    {
        await Confirmations.ConfirmAsync(db, Entry(), Start, Stop);
        var newer = await PublishedPlans.PublishAsync(db, Start, "{}", [Set("V1")], "Anna", null, Start, Stop);

        var other = await Confirmations.ConfirmAsync(db, Entry() with { SetId = newer.Sets[0].Id }, Start, Stop);

        Assert.Equal(ConfirmationStatus.Conflict, other.Status);
        Assert.Equal(1, await db.AppliedWaters.CountAsync(w => w.StartedAt == Start, Stop));
    }

    // Published again while last night's sets are not confirmed yet: their water still counts, that of sets nobody opened any more does not.
    [Fact]
    public async Task Sets_of_an_older_plan_that_began_before_the_next_count_until_somebody_says_something()
    {
        var newer = await PublishedPlans.PublishAsync(
            db, Start.AddHours(2), "{}", [Set("V1"), Set("V2", hoursLater: 24)], "Anna", null, Start.AddHours(2), Stop);
        Assert.Equal([("V1", Start), ("V2", Start)], await BegunAsync(Start.AddHours(12)));
        Assert.Equal([("V1", Start), ("V2", Start), ("V2", Start.AddHours(24))], await BegunAsync(Start.AddHours(36)));

        // Said under the newer plan, which names the same opening.
        await Confirmations.ConfirmAsync(db, Entry() with { SetId = newer.Sets.Single(s => s.ValveCode == "V1").Id }, Start.AddHours(12), Stop);
        Assert.Equal([("V2", Start)], await BegunAsync(Start.AddHours(12)));
        await Confirmations.ConfirmAsync(db, Entry() with { EntryId = Guid.NewGuid(), SetId = plan.Sets.Single(s => s.ValveCode == "V2").Id, Hours = 0, MeterM3 = null, NotRun = NotRunReason.NoPower }, Start.AddHours(12), Stop);
        Assert.Empty(await BegunAsync(Start.AddHours(12)));
    }

    [Fact]
    public async Task Sets_that_a_newer_plan_or_a_withdrawal_came_before_never_ran()
    {
        Assert.Empty(await BegunAsync(Start.AddMinutes(-1)));
        var newer = await PublishedPlans.PublishAsync(db, Start.AddHours(-2), "{}", [Set("V2", hoursLater: 1)], "Anna", null, Start.AddHours(-2), Stop);
        Assert.Equal([("V2", Start.AddHours(1))], await BegunAsync(Start.AddHours(12)));

        Assert.Null(await PublishedPlans.WithdrawAsync(db, newer.Id, "Anna", Start.AddHours(-1), Stop));
        Assert.Equal([("V1", Start), ("V2", Start)], await BegunAsync(Start.AddHours(12)));
    }

    [Fact]
    public async Task A_set_that_is_not_there_is_said_to_be_unknown()
    {
        var result = await Confirmations.ConfirmAsync(db, Entry() with { SetId = 4711 }, Start, Stop);

        Assert.Equal((ConfirmationStatus.UnknownSet, "There is no set 4711."), (result.Status, result.Problem));
    }

    [Theory]
    [InlineData(-0.1, null)]
    [InlineData(double.NaN, null)]
    [InlineData(745, null)]
    [InlineData(1, -1.0)]
    [InlineData(1, double.NaN)]
    public async Task Hours_and_meter_out_of_range_are_refused(double hours, double? meter) =>
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(
            () => Confirmations.ConfirmAsync(db, Entry() with { Hours = hours, MeterM3 = meter }, Start, Stop));

    [Fact]
    public async Task Twenty_posts_of_one_entry_at_once_store_it_once()
    {
        var entry = Entry();

        var results = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Task.Run(
            async () =>
            {
                await using var own = DatabaseSetup.Open(folder.File("estate.db"));
                return await Confirmations.ConfirmAsync(own, entry, Start, Stop);
            },
            Stop)));

        Assert.Single(results, r => r.Status == ConfirmationStatus.Stored);
        Assert.Equal(19, results.Count(r => r.Status == ConfirmationStatus.StoredBefore));
        Assert.Single(results.Select(r => r.Receipt!.Id).Distinct());
        Assert.Equal(1, await db.SetConfirmations.CountAsync(Stop));
        Assert.Equal(1, await db.AppliedWaters.CountAsync(w => w.StartedAt == Start, Stop));
    }

    private async Task<List<(string Valve, DateTimeOffset Start)>> BegunAsync(DateTimeOffset now) =>
        [.. (await PublishedPlans.BegunAsync(db, now, Stop)).Select(s => (s.ValveCode, s.Start))];

    private static PublishedSet Set(string valve, double hoursLater = 0) => new()
    {
        ValveCode = valve,
        SourceCode = "dam",
        Start = Start.AddHours(hoursLater),
        End = Start.AddHours(hoursLater + 4),
        Hours = 4,
        FlowM3PerH = 20,
    };

    private ConfirmationEntry Entry() => new(Guid.NewGuid(), plan.Sets[0].Id, 3.5, 70, "Ben", "late", Start.AddHours(11));
}
