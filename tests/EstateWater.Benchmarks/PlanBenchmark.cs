using System.Diagnostics;
using System.Globalization;
using EstateWater.Data.Folder;
using EstateWater.Data.Store;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Benchmarks;

/// <summary>Planning from a folder against merely reading and comparing it, each as the command a person runs.</summary>
internal static class PlanBenchmark
{
    private const double Most = 4;
    private const int Repetitions = 9, WarmRepetitions = 5;

    public static async Task<bool> RunAsync(string folder, string asOf, CancellationToken cancellation)
    {
        Console.WriteLine($"plan: the command on {folder} as of {asOf}");
        var nowhere = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.db");
        var (import, plan) = (new Samples("import --dry-run", "s"), new Samples("plan", "s"));
        for (var i = 0; i < Repetitions; i++)
        {
            import.Add((await ChildRun.TimeAsync(cancellation, Checkout.Program, "import", "--dry-run", "--data", folder, "--database", nowhere)).TotalSeconds);
            plan.Add((await ChildRun.TimeAsync(cancellation, Checkout.Program, "plan", "--data", folder, "--as-of", asOf)).TotalSeconds);
        }

        Console.WriteLine(import);
        Console.WriteLine(plan);
        var met = Report.AtMost("plan to import, wall time", plan.Median / import.Median, Most, "times");
        Report.Note("the same in one warm process", await WarmRatioAsync(folder, asOf, cancellation), "times");
        return met;
    }

    private static async Task<double> WarmRatioAsync(string folder, string asOf, CancellationToken cancellation)
    {
        var instant = DateTimeOffset.Parse(asOf, CultureInfo.InvariantCulture);
        var (import, plan) = (new Samples("import --dry-run, warm", "s"), new Samples("plan, warm", "s"));
        for (var i = 0; i <= WarmRepetitions; i++)
        {
            var started = Stopwatch.GetTimestamp();
            await using (var empty = await DatabaseSetup.OpenCopyInMemoryAsync(cancellation: cancellation))
            {
                await EstateStore.CompareAsync(empty, EstateFolder.Read(folder).Contents!, cancellation);
            }

            var between = Stopwatch.GetTimestamp();
            PlanJson.Write(Planner.Plan(PlanRequests.From(EstateFolder.Read(folder).Contents!, instant), cancellation));
            if (i > 0) // The first warms.
            {
                import.Add(Stopwatch.GetElapsedTime(started, between).TotalSeconds);
                plan.Add(Stopwatch.GetElapsedTime(between).TotalSeconds);
            }
        }

        Console.WriteLine(import);
        Console.WriteLine(plan);
        return plan.Median / import.Median;
    }
}
