using EstateWater.Data.Folder;

namespace EstateWater.Tests.Data;

public sealed class FolderOutputTests
{
    [Fact]
    public void Writing_twice_writes_the_same_bytes()
    {
        using var small = new SmallEstate();
        using var folder = new TemporaryFolder();
        EstateFolder.Write(small.Read().Contents!, folder.File("one"));
        EstateFolder.Write(EstateFolder.Read(folder.File("one")).Contents!, folder.File("two"));

        Assert.Equal(SmallEstate.FileNames.Order(), Directory.EnumerateFiles(folder.File("two")).Select(f => Path.GetFileName(f)).Order());
        Assert.All(SmallEstate.FileNames, name => Assert.Equal(File.ReadAllBytes(folder.File($"one/{name}")), File.ReadAllBytes(folder.File($"two/{name}"))));
    }

    [Fact]
    public void Instants_carry_the_offset_of_the_estate_at_that_instant()
    {
        using var small = new SmallEstate();
        small.Change("estate.json", "Africa/Johannesburg", "Australia/Adelaide");
        small.Put("applied-water.csv", "valve,started_at,hours\nV1,2024-01-10T10:00:00Z,1\nV1,2024-07-10T10:00:00Z,1\n");
        using var folder = new TemporaryFolder();

        EstateFolder.Write(small.Read().Contents!, folder.Path);

        // Adelaide is 9 h 30 min ahead of UTC, 10 h 30 min in its summer.
        Assert.Equal(
            ["valve,started_at,hours,meter_m3,confirmed_by,note", "V1,2024-01-10T20:30:00+10:30,1,,,", "V1,2024-07-10T19:30:00+09:30,1,,,"],
            File.ReadAllLines(folder.File("applied-water.csv")));
    }

    [Fact]
    public void An_estate_folder_is_replaced_and_what_is_not_ours_stays()
    {
        using var small = new SmallEstate();
        var estate = small.Read().Contents!;
        small.Put("README.md", "ours");

        EstateFolder.Write(estate with { Stages = [] }, small.Path);

        Assert.False(File.Exists(Path.Combine(small.Path, "stages.csv")));
        Assert.Equal("ours", small.Text("README.md"));
        Assert.Empty(Directory.EnumerateDirectories(Path.GetDirectoryName(small.Path)!, $".{Path.GetFileName(small.Path)}*"));
    }

    [Fact]
    public void A_folder_of_something_else_is_left_alone()
    {
        using var small = new SmallEstate();
        using var other = new TemporaryFolder();
        File.WriteAllText(other.File("thesis.txt"), "years of work");

        Assert.Throws<IOException>(() => EstateFolder.Write(small.Read().Contents!, other.Path));
        Assert.Throws<IOException>(() => EstateFolder.Write(small.Read().Contents!, other.File("thesis.txt")));

        Assert.Equal([other.File("thesis.txt")], Directory.EnumerateFileSystemEntries(other.Path));
    }

    [Fact]
    public void A_failure_half_way_leaves_the_old_folder_as_it_was()
    {
        using var small = new SmallEstate();
        var estate = small.Read().Contents!;
        var before = small.Text("weather-daily.csv");
        var broken = estate with { Weather = [], AppliedWaters = [null!] };

        Assert.ThrowsAny<Exception>(() => EstateFolder.Write(broken, small.Path));

        Assert.Equal(before, small.Text("weather-daily.csv"));
        Assert.Empty(Directory.EnumerateDirectories(Path.GetDirectoryName(small.Path)!, $".{Path.GetFileName(small.Path)}*"));
    }
}
