using System.CommandLine;
using System.Globalization;
using EstateWater.Data.Folder;
using EstateWater.Planning.Accuracy;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Web.Commands;

/// <summary><c>accuracy</c>: what past outlooks had said against what was read.</summary>
internal static class AccuracyCommand
{
    private const string Columns = "sets, mean absolute error (bar), bias (bar), inside the 80 % band, no change (bar), straight line (bar), ratio to no change";

    public static Command Create()
    {
        var data = new Option<string>("--data") { Description = "The estate folder.", Required = true };
        var byBlock = new Option<bool>("--by-block") { Description = "Also every block at every lead, those known poorly first." };
        var rows = new Option<string?>("--out") { Description = "A CSV file for every outlook that was held against a set." };
        var command = new Command("accuracy", "Holds past outlooks against the readings that followed, beside two plain rivals.") { data, byBlock, rows };
        command.SetAction((parsed, cancellation) => Run(
            new Sought(parsed.GetRequiredValue(data), parsed.GetValue(byBlock), parsed.GetValue(rows)),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error,
            cancellation));
        return command;
    }

    private static async Task<int> Run(Sought sought, TextWriter output, TextWriter errors, CancellationToken cancellation)
    {
        var reading = EstateFolder.Read(sought.Folder);
        if (reading.Contents is not { } contents)
        {
            return await Refusal.WriteAsync(errors, reading.Defects);
        }

        var report = new AccuracyReport(Hindcast.Run(
            (asOf, days) => PastKnowledge.At(contents, asOf, days),
            PlanRequests.From(contents, DateTimeOffset.MaxValue.AddDays(-2)),
            AccuracyReport.Leads,
            parallelism: Hindcast.ParallelismFor(Environment.ProcessorCount),
            cancellation: cancellation));
        await WriteAsync(output, report, sought.ByBlock);
        if (sought.RowsFile is { } rowsFile)
        {
            await File.WriteAllLinesAsync(rowsFile, HeldFile.Lines(report.Held), cancellation);
        }

        return ExitCodes.Done;
    }

    private static async Task WriteAsync(TextWriter output, AccuracyReport report, bool byBlock)
    {
        await output.WriteLineAsync($"days ahead, {Columns}");
        foreach (var lead in AccuracyReport.Leads)
        {
            await output.WriteLineAsync(report.Estate(lead) is { } score ? $"{lead}, {Words(score)}" : $"{lead}, 0");
        }

        if (!byBlock)
        {
            return;
        }

        await output.WriteLineAsync();
        await output.WriteLineAsync($"days ahead, block, {Columns}");
        foreach (var lead in AccuracyReport.Leads)
        {
            foreach (var (block, score) in report.Blocks(lead))
            {
                await output.WriteLineAsync($"{lead}, {block}, {Words(score)}");
            }
        }
    }

    private static string Words(AccuracyScore score) => string.Create(
        CultureInfo.InvariantCulture,
        $"{score.Sets}, {score.ErrorBar:0.000}, {score.BiasBar:+0.000;-0.000}, {score.InsideBandShare:P0}, {score.NoChangeErrorBar:0.000}, {score.StraightLineErrorBar:0.000}, {score.ErrorBar / score.NoChangeErrorBar:0.00}");

    private sealed record Sought(string Folder, bool ByBlock, string? RowsFile);
}
