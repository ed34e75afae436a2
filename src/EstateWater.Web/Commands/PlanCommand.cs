using System.CommandLine;
using EstateWater.Data.Folder;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Web.Commands;

/// <summary><c>plan</c>: plans from an estate folder without touching any database.</summary>
internal static class PlanCommand
{
    public static Command Create()
    {
        var data = new Option<string>("--data") { Description = "The estate folder.", Required = true };
        var asOf = new Option<string>("--as-of") { Description = "The moment the plan looks from: an ISO 8601 instant with an offset.", Required = true };
        var horizon = new Option<int>("--horizon-days") { Description = $"Days ahead, 1 to {Planner.LongestHorizonDays}.", DefaultValueFactory = _ => PlanRequests.UsualHorizonDays };
        var into = new Option<string?>("--out") { Description = "The file to write; standard output when left out." };
        var command = new Command("plan", "Plans from an estate folder and prints the plan as JSON.") { data, asOf, horizon, into };
        command.SetAction((parsed, cancellation) => Run(
            parsed.GetRequiredValue(data), parsed.GetRequiredValue(asOf), parsed.GetValue(horizon), parsed.GetValue(into), parsed.InvocationConfiguration, cancellation));
        return command;
    }

    private static async Task<int> Run(string folder, string asOfText, int horizonDays, string? into, InvocationConfiguration console, CancellationToken cancellation)
    {
        var problems = new List<string>();
        if (!Instants.TryRead(asOfText, out var asOf))
        {
            problems.Add(Instants.Refusal(asOfText));
        }

        if (horizonDays is < 1 or > Planner.LongestHorizonDays)
        {
            problems.Add($"--horizon-days: {horizonDays} is outside 1 to {Planner.LongestHorizonDays}");
        }

        var reading = EstateFolder.Read(folder);
        problems.AddRange(reading.Defects.Select(d => d.ToString()));
        if (problems.Count == 0 && PlanGaps.Of(reading.Contents!, asOf) is { Count: > 0 } gaps)
        {
            problems.AddRange(gaps.Select(d => d.ToString()));
        }

        if (problems.Count > 0)
        {
            return await Refusal.WriteAsync(console.Error, problems);
        }

        var plan = PlanJson.Write(Planner.Plan(PlanRequests.From(reading.Contents!, asOf, horizonDays), cancellation)) + "\n";
        if (into is null)
        {
            await console.Output.WriteAsync(plan);
        }
        else
        {
            await File.WriteAllTextAsync(into, plan, cancellation);
        }

        return ExitCodes.Done;
    }
}
