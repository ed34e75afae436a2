using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Tests.Data;

public sealed class ManyReadingsTests : IDisposable
{
    private const int Count = 50_000;
    private readonly TemporaryFolder folder = new();

    public ManyReadingsTests()
    {
        using var small = new SmallEstate();
        var from = new DateTimeOffset(2020, 1, 1, 13, 0, 0, TimeSpan.FromHours(2));
        var readings = Enumerable.Range(0, Count).Select(i => new ChamberReading
        {
            BlockCode = i % 2 == 0 ? "B1" : "B2",
            TakenAt = from.AddDays(i / 40).AddMinutes(i % 40),
            Measure = WaterPotentialMeasure.Leaf,
            Group = "G1",
            Vine = $"{i % 40}",
            TensionBar = 8 + (i % 37 * 0.25),
            Exposure = LeafExposure.Sun,
            DelayS = 20 + (i % 30),
        });
        EstateFolder.Write(small.Read().Contents! with { ChamberReadings = [.. readings] }, folder.Path);
    }

    [Fact]
    public async Task Fifty_thousand_readings_are_imported_and_found_again()
    {
        var stop = TestContext.Current.CancellationToken;
        var contents = EstateFolder.Read(folder.Path).Contents!;
        await using var db = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: stop);

        await EstateStore.ImportAsync(db, contents, stop);

        Assert.Equal(Count, await db.ChamberReadings.CountAsync(stop));
        Assert.True((await EstateStore.ImportAsync(db, contents, stop)).ChangedNothing);
    }

    public void Dispose() => folder.Dispose();
}
