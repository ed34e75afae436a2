using System.Globalization;
using EstateWater.Data.Folder;
using EstateWater.Tests.Data;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Commands;

namespace EstateWater.Tests.Web.Accuracy;

public sealed class AccuracyCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public async Task Every_lead_is_told_for_the_estate_and_by_block_and_every_outlook_in_a_file()
    {
        EstateFolder.Write(StoredEstate.Contents, folder.File("estate"));
        var (code, output) = await RunAsync("--data", folder.File("estate"), "--by-block", "--out", folder.File("held.csv"));
        Assert.Equal(0, code);
        var lines = output.Split('\n');
        Assert.Equal(["1, 6", "3, 6", "7, 4", "10, 4"], lines[1..5].Select(line => string.Join(", ", line.Split(", ")[..2])));
        Assert.Equal(
            ["1, B1, 3", "1, B2, 3", "3, B1, 3", "3, B2, 3", "7, B1, 2", "7, B2, 2", "10, B1, 2", "10, B2, 2"],
            lines[7..15].Select(line => string.Join(", ", line.Split(", ")[..3])).OrderBy(line => int.Parse(line.Split(", ")[0], CultureInfo.InvariantCulture)).ThenBy(line => line, StringComparer.Ordinal));

        var rows = await File.ReadAllLinesAsync(folder.File("held.csv"), TestContext.Current.CancellationToken);
        Assert.Equal(1 + 6 + 6 + 4 + 4, rows.Length);
        // Block, day, measure and lead; the set of 10 bar, its error apart; and the last reading of 9 bar, with no line yet.
        Assert.StartsWith("B1,2025-01-06,leaf,1,10,", rows[1], StringComparison.Ordinal);
        Assert.EndsWith(",9,", rows[1], StringComparison.Ordinal);
        Assert.EndsWith(",11,12", rows.Single(row => row.StartsWith("B2,2025-01-20,leaf,1,12,", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private static async Task<(int Code, string Output)> RunAsync(params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        var code = await AccuracyCommand.Create().Parse(arguments).InvokeAsync(new() { Output = output }, TestContext.Current.CancellationToken);
        return (code, output.ToString());
    }
}
