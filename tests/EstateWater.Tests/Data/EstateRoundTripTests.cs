using CsCheck;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Data.Store;

namespace EstateWater.Tests.Data;

public sealed class EstateRoundTripTests
{
    [Fact]
    public void What_is_written_is_read_back_the_same() =>
        EstateGenerator.Estates.Sample(
            estate =>
            {
                using var folder = new TemporaryFolder();
                EstateFolder.Write(estate, folder.Path);

                var (contents, defects) = EstateFolder.Read(folder.Path);

                Assert.Empty(defects);
                Assert.Equal(EstateText.Of(OnEstateClock(estate)), EstateText.Of(contents!));
            },
            iter: 300,
            threads: 2);

    [Fact]
    public async Task What_is_imported_is_loaded_the_same_and_a_second_import_changes_nothing() =>
        await EstateGenerator.Estates.SampleAsync(
            async estate =>
            {
                await using var db = await DatabaseSetup.OpenCopyInMemoryAsync();

                var first = await EstateStore.ImportAsync(db, estate);
                var loaded = await EstateStore.LoadAsync(db);
                var second = await EstateStore.ImportAsync(db, loaded!);

                Assert.Equal(EstateText.Of(OnEstateClock(estate)), EstateText.Of(loaded!));
                Assert.All(first.Files, f => Assert.Equal((0, 0, 0), (f.Changed, f.Unchanged, f.Kept)));
                Assert.True(second.ChangedNothing);
            },
            iter: 30,
            threads: 2);

    // Both readers give instants on the estate's clock, whatever offset they were written with.
    private static EstateContents OnEstateClock(EstateContents estate)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(estate.Estate.TimeZone);
        return estate with
        {
            Forecasts = [.. estate.Forecasts.Select(f => f with { IssuedAt = TimeZoneInfo.ConvertTime(f.IssuedAt, zone) })],
            ChamberReadings = [.. estate.ChamberReadings.Select(r => r with { TakenAt = TimeZoneInfo.ConvertTime(r.TakenAt, zone) })],
            AppliedWaters = [.. estate.AppliedWaters.Select(w => w with { StartedAt = TimeZoneInfo.ConvertTime(w.StartedAt, zone) })],
        };
    }
}
