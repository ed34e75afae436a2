using System.Globalization;
using System.Runtime.CompilerServices;
using EstateWater.Data.Folder;
using EstateWater.Simulation.Demo;

namespace EstateWater.Tests.Demo;

/// <summary>The committed demo folder: what the generator writes, and what the program reads.</summary>
public sealed class DemoFolderTests
{
    private const long LargestBytes = 1_500_000;

    /// <summary>The folder as it is in the source tree.</summary>
    public static string Folder([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "seed"));

    [Fact]
    public void The_committed_folder_is_byte_for_byte_what_the_command_writes()
    {
        var fresh = Directory.CreateTempSubdirectory("estate-water-seed-");
        try
        {
            DemoSeasons.Write(fresh.FullName);
            var committed = Directory.GetFiles(Folder()).Select(Path.GetFileName).Where(n => n != "README.md").Order();
            Assert.Equal(fresh.GetFiles().Select(f => f.Name).Order(), committed);
            Assert.All(fresh.GetFiles(), f => Assert.True(
                File.ReadAllBytes(f.FullName).SequenceEqual(File.ReadAllBytes(Path.Combine(Folder(), f.Name))),
                $"{f.Name} differs; write the folder anew with the command in seed/README.md"));
        }
        finally
        {
            fresh.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_folder_reads_without_a_defect()
    {
        var reading = EstateFolder.Read(Folder());
        Assert.Empty(reading.Defects);
        var estate = reading.Contents!;
        Assert.Equal(36, estate.Blocks.Count);
        Assert.Equal(28, estate.Valves.Count);
        Assert.Equal(2, estate.Stations.Count);
        Assert.Equal(3, estate.Sources.Count);
    }

    [Fact]
    public void The_folder_is_small_enough_to_ship() =>
        Assert.InRange(Directory.GetFiles(Folder()).Sum(f => new FileInfo(f).Length), 1, LargestBytes);

    [Fact]
    public void The_clock_is_a_tuesday_morning_that_nothing_measured_passes()
    {
        var clock = DateTimeOffset.Parse(File.ReadAllText(Path.Combine(Folder(), "demo-clock.txt")).Trim(), CultureInfo.InvariantCulture);
        Assert.Equal(DayOfWeek.Tuesday, clock.DayOfWeek);
        Assert.Equal(6, clock.Hour);
        var estate = EstateFolder.Read(Folder()).Contents!;
        Assert.True(estate.ChamberReadings.Max(r => r.TakenAt) < clock);
        Assert.True(estate.AppliedWaters.Max(w => w.StartedAt.AddHours(w.Hours)) < clock);
        Assert.True(estate.Forecasts.Max(f => f.IssuedAt) < clock);
        Assert.True(estate.Weather.Max(w => w.Date) < DateOnly.FromDateTime(clock.DateTime));
    }

    [Fact]
    public void Most_members_of_the_latest_forecast_have_three_days_of_heat_from_five_days_ahead()
    {
        var clock = DemoEstate.ClockDay;
        var estate = EstateFolder.Read(Folder()).Contents!;
        var latest = estate.Forecasts.Max(f => f.IssuedAt);
        var members = estate.Forecasts.Where(f => f.IssuedAt == latest && f.Member is not null && f.StationCode == "creek").GroupBy(f => f.Member).ToList();
        Assert.True(members.Count >= 10);
        var hot = members.Count(m => m.Count(d => d.Date >= clock.AddDays(5) && d.Date < clock.AddDays(10) && d.TMaxC >= 38) >= 3);
        Assert.True(hot > 0.7 * members.Count, $"{hot} of {members.Count} members");
        Assert.All(members.SelectMany(m => m).Where(d => d.Date < clock.AddDays(5)), d => Assert.True(d.TMaxC < 38));
    }
}
