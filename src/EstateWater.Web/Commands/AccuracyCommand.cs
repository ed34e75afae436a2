using System.CommandLine;
using System.Globalization;
using EstateWater.Data.Folder;
using EstateWater.Planning.Accuracy;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Web.Commands;

/// <summary><c>accuracy</c>: what past outlooks had said against what was read.</summary>
internal static class AccuracyCommand
{
    private static readonly int[] Leads = [1, 3, 7, 10];

    public static Command Create()
    {
        var data = new Option<string>("--data") { Description = "The estate folder.", Required = true };
        var rows = new Option<string?>("--out") { Description = "A CSV file for every outlook that was held against a set." };
        var command = new Command("accuracy", "Holds past outlooks against the readings that followed, beside two plain rivals.") { data, rows };
        command.SetAction((parsed, cancellation) => Run(parsed.GetRequiredValue(data), parsed.GetValue(rows), cancellation));
        return command;
    }

    private static async Task<int> Run(string folder, string? rowsFile, CancellationToken cancellation)
    {
        var reading = EstateFolder.Read(folder);
        if (reading.Contents is not { } contents)
        {
            return await Refusal.WriteAsync(Console.Error, reading.Defects);
        }

        var full = PlanRequests.From(contents, DateTimeOffset.MaxValue.AddDays(-2));
        await Console.Out.WriteLineAsync("days ahead, sets, mean absolute error (bar), bias (bar), inside the 80 % band, no change (bar), straight line (bar), ratio to no change");
        var rows = new List<string> { "block,date,measure,days_ahead,read_bar,standard_error_bar,expected_p10_bar,expected_p50_bar,expected_p90_bar,no_change_bar,straight_line_bar" };
        foreach (var lead in Leads)
        {
            var held = Hindcast.Run((asOf, days) => PlanRequests.From(contents, asOf, days), full, lead, cancellation);
            rows.AddRange(held.Select(Row));
            await Console.Out.WriteLineAsync(Summary(lead, AccuracyScore.Of(held)));
        }

        if (rowsFile is not null)
        {
            await File.WriteAllLinesAsync(rowsFile, rows, cancellation);
        }

        return ExitCodes.Done;
    }

    private static string Summary(int lead, AccuracyScore? score) => score is null
        ? $"{lead}, 0"
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{lead}, {score.Sets}, {score.ErrorBar:0.000}, {score.BiasBar:+0.000;-0.000}, {score.InsideBandShare:P0}, {score.NoChangeErrorBar:0.000}, {score.StraightLineErrorBar:0.000}, {score.ErrorBar / score.NoChangeErrorBar:0.00}");

    private static string Row(HeldAgainst held) => string.Create(
        CultureInfo.InvariantCulture,
        $"{held.Block},{held.Date:yyyy-MM-dd},{held.Measure.ToString().ToLowerInvariant()},{held.LeadDays},{held.ReadBar:0.###},{held.StandardErrorBar:0.###},{held.Expected.P10},{held.Expected.P50},{held.Expected.P90},{held.NoChangeBar:0.###},{held.StraightLineBar:0.###}");
}
