using System.CommandLine;
using EstateWater.Benchmarks;
using EstateWater.Benchmarks.ClosedLoop;

string[] names = ["plan", "page", "circuit", "season-balance", "learning", "packing", "closed-loop", "plain", "all"];
var name = new Argument<string>("name") { Description = $"What to measure: {string.Join(", ", names)}." };
name.AcceptOnlyFromAmong(names);
var data = new Option<string>("--data") { Description = "The estate folder to measure with; the demo estate when not given.", DefaultValueFactory = _ => Checkout.Seed };
var asOf = new Option<string>("--as-of") { Description = "The instant to plan from; the demo's when not given.", DefaultValueFactory = _ => Checkout.DemoInstant };
var seeds = new Option<string>("--seeds") { Description = "Seeds of the closed loop; the held-back ones when not given.", DefaultValueFactory = _ => ClosedLoopCommand.HeldBackSeeds };
var share = new Option<double?>("--allocation-share") { Description = "Closed loop with an allocation of so much of what one who knows everything would use, such as 0.6; as drawn when not given." };
var rows = new Option<string?>("--out") { Description = "A CSV file to which the closed loop adds a row for every outlook and what came true." };
var only = new Option<string?>("--only") { Description = "The closed loop under one decider alone, such as planner." };
var forecastError = new Option<double>("--forecast-error") { Description = "Closed loop under forecasts so many times as wrong as usual; 0 for the weather that comes.", DefaultValueFactory = _ => 1 };
var readBefore = new Option<bool>("--read-before") { Description = "Closed loop of estates that were read through the season before, which the threshold rule watered." };
var root = new RootCommand("Measures the speed targets as ratios within one run. Exit 1 when one is missed.") { name, data, asOf, seeds, share, rows, only, forecastError, readBefore };
root.SetAction(async (parsed, cancellation) =>
{
    var (wanted, folder, instant) = (parsed.GetRequiredValue(name), Path.GetFullPath(parsed.GetRequiredValue(data)), parsed.GetRequiredValue(asOf));
    if (wanted is "closed-loop")
    {
        return parsed.GetValue(share) is { } part
            ? ShortSeasonCommand.Run(parsed.GetRequiredValue(seeds), part)
            : ClosedLoopCommand.Run(parsed.GetRequiredValue(seeds), parsed.GetValue(rows), parsed.GetValue(only), parsed.GetValue(forecastError), parsed.GetValue(readBefore));
    }

    if (wanted is "plain")
    {
        return PlainAccuracy.Run(folder, cancellation);
    }

    var met = true;
    if (wanted is "season-balance" or "all")
    {
        met &= SeasonBalanceBenchmark.Run() == 0;
    }

    if (wanted is "learning" or "all")
    {
        met &= LearningBenchmark.Run(folder, instant, cancellation);
    }

    if (wanted is "packing" or "all")
    {
        met &= PackingBenchmark.Run(folder, instant, cancellation);
    }

    if (wanted is "plan" or "all")
    {
        met &= await PlanBenchmark.RunAsync(folder, instant, cancellation);
    }

    if (wanted is "page" or "circuit" or "all")
    {
        await using var served = await ServedEstate.StartAsync(folder, instant, cancellation);
        met &= wanted is "circuit" || await PageBenchmark.RunAsync(served, cancellation);
        met &= wanted is "page" || await OpenPageBenchmark.RunAsync(served, cancellation);
    }

    return met ? 0 : 1;
});
return await root.Parse(args).InvokeAsync();
