using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Tests.Planning.WhatIf;

namespace EstateWater.Tests.Planning;

/// <summary>A published week meets what no plan knew: other hours told, other readings, heat that came or did not, a valve that broke. The next plan still keeps every limit.</summary>
public sealed class LivedWeekTests
{
    private static readonly double[] Flows = [34, 60, 120, 400];

    // Of which 2136 m³ are used.
    private static readonly double[] Allocations = [3_000, 6_000, 40_000];

    public static TheoryData<int> Weeks => [.. Enumerable.Range(1, 24)];

    [Theory]
    [MemberData(nameof(Weeks))]
    public void The_next_plan_keeps_every_limit(int seed)
    {
        var chance = new Random(seed);
        var before = SmallEstate.Request(8, Flows[chance.Next(Flows.Length)], Allocations[chance.Next(Allocations.Length)], hotC: 36 + (chance.NextDouble() * 6));
        var told = Plan(before);
        var now = before with
        {
            Standing = [.. told.Sets.Where(_ => chance.NextDouble() < 0.9).Select(s => Told(s, chance))],
            Blocks = [.. before.Blocks.Select(b => chance.NextDouble() < 0.4 ? SmallEstate.ReadAgain(b, (chance.NextDouble() * 6) - 3) : b)],
            Stations = [.. before.Stations.Select(s => s with { Forecasts = [SmallEstate.Forecast(33 + (chance.NextDouble() * 10))] })],
        };
        PlanLimits.AssertKept(Plan(now), now);

        var changed = now with
        {
            HoursByHand = before.Blocks.Where(_ => chance.NextDouble() < 0.2).ToDictionary(b => b.Code, _ => chance.Next(0, 40) / 4.0),
            Changes = [.. before.Valves.Where(_ => chance.NextDouble() < 0.2).Select(v => Closed(v.Code, chance))],
        };
        PlanLimits.AssertKept(Plan(changed), changed);
    }

    // As told, or up to two hours longer or shorter.
    private static StandingSet Told(PlannedSet set, Random chance) =>
        new(set.Valve, set.Start, Math.Max(0.25, set.Hours + (chance.NextDouble() < 0.5 ? chance.Next(-8, 9) / 4.0 : 0)));

    private static ValveClosed Closed(string valve, Random chance)
    {
        var first = SmallEstate.Today.AddDays(chance.Next(0, 8));
        return new ValveClosed(valve, first, first.AddDays(chance.Next(0, 3)));
    }

    private static Plan Plan(PlanRequest request) => Planner.Plan(request, TestContext.Current.CancellationToken);
}
