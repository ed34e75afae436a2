using System.Diagnostics;
using System.Globalization;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Benchmarks;

/// <summary>How near the packing comes to the best possible, as its own bound proves, where water, hours or sources are scarce.</summary>
internal static class PackingBenchmark
{
    private const double MostPct = 2;
    private const int Blocks = 60, ManyBlocks = 500;

    public static bool Run(string folder, string asOf, CancellationToken cancellation)
    {
        Console.WriteLine($"packing: proven gap of {Blocks} blocks from {folder} as of {asOf}");
        var one = WideEstate.Read(folder);
        var instant = DateTimeOffset.Parse(asOf, CultureInfo.InvariantCulture);
        var several = PlanRequests.From(WideEstate.Of(one, Blocks), instant);
        var met = true;
        foreach (var (name, request) in Scenarios("several sources", several).Concat(Scenarios("one source", OnOneSource(several))))
        {
            met &= Report.AtMost(name, GapPct(request, cancellation), MostPct, "%");
        }

        Report.Note($"{ManyBlocks} blocks", GapPct(PlanRequests.From(WideEstate.Of(one, ManyBlocks), instant), cancellation), "%");
        return met;
    }

    private static IEnumerable<(string Name, PlanRequest Request)> Scenarios(string sources, PlanRequest request)
    {
        yield return ($"{sources}, as they are", request);
        yield return ($"{sources}, twice the flow and no allocation", Each(request, s => s with { MaxFlowM3PerH = 2 * s.MaxFlowM3PerH, SeasonAllocationM3 = null }));
        yield return ($"{sources}, two thirds of the hours", Each(request, s => s with { DailyTo = s.DailyTo.AddHours(-4) }));
        yield return ($"{sources}, half the water wanted left", WithHalfTheWater(request));
        yield return ($"{sources}, half the water wanted left and two thirds of the hours", WithHalfTheWater(Each(request, s => s with { DailyTo = s.DailyTo.AddHours(-4) })));
    }

    private static double GapPct(PlanRequest request, CancellationToken cancellation)
    {
        var fitted = Planner.Fit(request, cancellation);
        var started = Stopwatch.GetTimestamp();
        var plan = Planner.Plan(fitted, request, cancellation);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {plan.Sets.Count} sets, {plan.Unmet.Count} blocks want more, {Stopwatch.GetElapsedTime(started).TotalSeconds:0.00} s"));
        return plan.Packing.GapPct;
    }

    // Everything on one pump as strong as all together.
    private static PlanRequest OnOneSource(PlanRequest request)
    {
        var sources = request.Sources;
        return request with
        {
            Sources = [sources[0] with { MaxFlowM3PerH = sources.Sum(s => s.MaxFlowM3PerH), SeasonAllocationM3 = sources.Sum(s => s.SeasonAllocationM3) }],
            Valves = [.. request.Valves.Select(v => v with { SourceCode = sources[0].Code })],
        };
    }

    // The season's allocation as if half of what is now planned were left of it.
    private static PlanRequest WithHalfTheWater(PlanRequest request)
    {
        var plan = Planner.Plan(Each(request, s => s with { SeasonAllocationM3 = 1e6 }));
        var used = plan.Water.ToDictionary(w => w.Source, w => 1e6 - w.PlannedM3 - w.LeftM3!.Value);
        var half = plan.Water.ToDictionary(w => w.Source, w => w.PlannedM3 / 2);
        return Each(request, s => s with { SeasonAllocationM3 = used[s.Code] + half[s.Code] });
    }

    private static PlanRequest Each(PlanRequest request, Func<PlanSource, PlanSource> change) => request with { Sources = [.. request.Sources.Select(change)] };
}
