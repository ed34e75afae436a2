using System.CommandLine;
using EstateWater.Data.Folder;
using EstateWater.Web.Commands;
using Microsoft.Data.Sqlite;

namespace EstateWater.Tests.Data;

public sealed class ImportExportCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly SmallEstate small = new();

    private string Database => folder.File("data/estate.db");

    [Fact]
    public async Task An_estate_goes_in_and_comes_out_the_same()
    {
        var (code, output, error) = await Run(ImportCommand.Create(), "--data", small.Path, "--database", Database);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("chamber-readings.csv: 5 new, 0 changed, 0 unchanged", output, StringComparison.Ordinal);
        Assert.EndsWith("Imported.\n", output, StringComparison.Ordinal);

        (code, output, error) = await Run(ImportCommand.Create(), "--data", small.Path, "--database", Database);
        Assert.Equal((0, ""), (code, error));
        Assert.EndsWith("Everything was there already.\n", output, StringComparison.Ordinal);

        (code, _, error) = await Run(ExportCommand.Create(), "--to", folder.File("out"), "--database", Database);
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(EstateText.Of(small.Read().Contents!), EstateText.Of(EstateFolder.Read(folder.File("out")).Contents!));
    }

    [Fact]
    public async Task A_dry_run_says_what_would_change_and_writes_nothing()
    {
        var (code, output, _) = await Run(ImportCommand.Create(), "--data", small.Path, "--database", Database, "--dry-run");

        Assert.Equal(0, code);
        Assert.Contains("blocks.geojson: 2 new, 0 changed, 0 unchanged", output, StringComparison.Ordinal);
        Assert.EndsWith("Nothing was written.\n", output, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task Bad_input_is_listed_and_nothing_is_written()
    {
        small.Change("stations.csv", "-33.9", "-133.9");
        small.Change("stages.csv", "11,23", "11,48");

        var (code, output, error) = await Run(ImportCommand.Create(), "--data", small.Path, "--database", Database);

        Assert.Equal((2, ""), (code, output));
        Assert.Equal(
            ["stations.csv:2: latitude: -133.9 is out of range; it must be -90 to 90", "stages.csv:2: el_stage: 48 is out of range; it must be 1 to 47", ""],
            error.Split('\n'));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_refused()
    {
        var text = folder.File("notes.txt");
        await File.WriteAllTextAsync(text, new string('x', 4096), TestContext.Current.CancellationToken);

        Assert.Equal(2, (await Run(ImportCommand.Create(), "--data", small.Path, "--database", text)).Code);
        Assert.Equal(2, (await Run(ExportCommand.Create(), "--to", folder.File("out"), "--database", text)).Code);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public async Task Nothing_is_exported_from_an_empty_database()
    {
        var (code, _, error) = await Run(ExportCommand.Create(), "--to", folder.File("out"), "--database", Database);

        Assert.Equal(2, code);
        Assert.Contains("holds no estate", error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task A_folder_of_something_else_is_not_exported_over()
    {
        await Run(ImportCommand.Create(), "--data", small.Path, "--database", Database);

        var (code, _, error) = await Run(ExportCommand.Create(), "--to", folder.Path, "--database", Database);

        Assert.Equal(2, code);
        Assert.Contains("something else than an estate", error, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Dispose();
        small.Dispose();
    }

    private static async Task<(int Code, string Output, string Error)> Run(Command command, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = await command.Parse(arguments).InvokeAsync(new() { Output = output, Error = error }, TestContext.Current.CancellationToken);
        return (code, output.ToString(), error.ToString());
    }
}
