using System.Diagnostics;
using System.Globalization;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Tests.Data;

[CollectionDefinition(nameof(EstateSpeedTests), DisableParallelization = true)]
[Collection(nameof(EstateSpeedTests))]
public sealed class EstateSpeedTests : IDisposable
{
    private const int Count = 50_000;
    private readonly TemporaryFolder folder = new();

    public EstateSpeedTests()
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

    // A clock on the wall says little of a busy machine, so the same work done as simply as can be is the measure:
    // lines cut at commas, three cells taken as instant and numbers, nothing checked, nothing sorted. It takes some 40 ms, so that 25 times as long is the second we allow ourselves.
    [Fact]
    public void Fifty_thousand_readings_are_read_and_checked_in_a_few_times_what_cutting_the_lines_takes()
    {
        var plain = Best(() => Assert.Equal(Count, CutLines()));
        var ours = Best(() => Assert.Equal(Count, EstateFolder.Read(folder.Path).Contents!.ChamberReadings.Count));

        TestContext.Current.TestOutputHelper!.WriteLine($"plain {plain:F0} ms, ours {ours:F0} ms");
        Assert.InRange(ours / plain, 0, 25);
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

    private static double Best(Action work) => Enumerable.Range(0, 7).Min(_ =>
    {
        var clock = Stopwatch.StartNew();
        work();
        return clock.Elapsed.TotalMilliseconds;
    });

    private int CutLines()
    {
        var rows = new List<(DateTimeOffset, double, double)>();
        foreach (var line in File.ReadLines(folder.File("chamber-readings.csv")).Skip(1))
        {
            var cells = line.Split(',');
            rows.Add((
                DateTimeOffset.Parse(cells[1], CultureInfo.InvariantCulture),
                double.Parse(cells[5], CultureInfo.InvariantCulture),
                double.Parse(cells[8], CultureInfo.InvariantCulture)));
        }

        return rows.Count;
    }
}
