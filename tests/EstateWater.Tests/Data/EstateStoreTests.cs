using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Tests.Data;

public sealed class EstateStoreTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_empty_database_holds_no_estate()
    {
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: Stop);

        Assert.Null(await EstateStore.LoadAsync(db, Stop));
    }

    [Fact]
    public async Task Import_counts_what_is_new_changed_and_unchanged()
    {
        using var small = new SmallEstate();
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: Stop);
        await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);
        small.Change("weather-daily.csv", "28.4", "28.6");
        small.Change("weather-daily.csv", "hill,2024-11-11,30.1,15,,,,,", "hill,2024-11-11,30.1,15,,,,,\nhill,2024-11-12,31,16,,,,,");
        small.Change("blocks.geojson", "[19.003, -33.899]", "[19.003, -33.8991]");

        var result = await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);

        Assert.Equal(new ImportedFile("weather-daily.csv", New: 1, Changed: 1, Unchanged: 1), result.Files.Single(f => f.File == "weather-daily.csv"));
        Assert.Equal(new ImportedFile("blocks.geojson", New: 0, Changed: 1, Unchanged: 1), result.Files.Single(f => f.File == "blocks.geojson"));
        Assert.Equal(new ImportedFile("chamber-readings.csv", New: 0, Changed: 0, Unchanged: 5), result.Files.Single(f => f.File == "chamber-readings.csv"));
        Assert.Equal(SmallEstate.FileNames, result.Files.Select(f => f.File));
        Assert.Equal(EstateText.Of(small.Read().Contents!), EstateText.Of((await EstateStore.LoadAsync(db, Stop))!));
    }

    [Fact]
    public async Task Import_removes_nothing()
    {
        using var small = new SmallEstate();
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: Stop);
        await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);
        small.Remove("chamber-readings.csv");

        var result = await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);

        Assert.True(result.ChangedNothing);
        Assert.Equal(5, await db.ChamberReadings.CountAsync(Stop));
    }

    [Fact]
    public async Task Comparing_writes_nothing()
    {
        using var small = new SmallEstate();
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: Stop);

        var result = await EstateStore.CompareAsync(db, small.Read().Contents!, Stop);

        Assert.False(result.ChangedNothing);
        Assert.Null(await EstateStore.LoadAsync(db, Stop));
    }

    [Fact]
    public async Task An_import_that_fails_half_way_leaves_nothing_behind()
    {
        using var small = new SmallEstate();
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: Stop);
        var contents = small.Read().Contents!;
        var broken = contents with { AppliedWaters = [new() { ValveCode = "no such valve", StartedAt = DateTimeOffset.UnixEpoch, Hours = 1 }] };

        await Assert.ThrowsAsync<DbUpdateException>(() => EstateStore.ImportAsync(db, broken, Stop));

        db.ChangeTracker.Clear();
        Assert.Null(await EstateStore.LoadAsync(db, Stop));
    }

    [Fact]
    public async Task Water_that_an_irrigator_confirmed_outlives_an_import_that_says_otherwise()
    {
        using var small = new SmallEstate();
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: Stop);
        await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);
        var start = new DateTimeOffset(2024, 11, 13, 20, 0, 0, TimeSpan.FromHours(2));
        var set = new PublishedSet { ValveCode = "V1", SourceCode = "dam", Start = start, End = start.AddHours(4), Hours = 4, FlowM3PerH = 20 };
        await PublishedPlans.PublishAsync(db, start, "{}", [set], "Anna", null, start, Stop);
        await Confirmations.ConfirmAsync(db, new(Guid.NewGuid(), set.Id, 3.5, null, "Ben", null, start), start, Stop);
        small.Change("applied-water.csv", "V1,2024-11-12T20:00:00+02:00", "V1,2024-11-13T20:00:00+02:00,9,,,\nV1,2024-11-12T20:00:00+02:00");

        var result = await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);

        Assert.Equal(new ImportedFile("applied-water.csv", New: 0, Changed: 0, Unchanged: 2, Kept: 1), result.Files[^1]);
        Assert.Equal(3.5, (await db.AppliedWaters.SingleAsync(w => w.StartedAt == start, Stop)).Hours);
        Assert.Equal(1, await db.PublishedPlans.CountAsync(Stop));
    }
}
