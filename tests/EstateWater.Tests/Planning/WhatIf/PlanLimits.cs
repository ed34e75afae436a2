using EstateWater.Planning;

namespace EstateWater.Tests.Planning.WhatIf;

/// <summary>Checks a plan against what its sources and valves can do, knowing nothing of how it was packed.</summary>
internal static class PlanLimits
{
    public static void AssertKept(Plan plan, PlanRequest request)
    {
        foreach (var source in request.Sources)
        {
            var sets = plan.Sets.Where(s => s.Source == source.Code).ToList();
            Assert.All(sets, s => AssertInWindow(s, source, request));
            foreach (var moment in sets.Select(s => s.Start))
            {
                var open = sets.Where(s => s.Start <= moment && moment < s.End).ToList();
                Assert.True(open.Sum(s => s.FlowM3PerH) <= source.MaxFlowM3PerH + 1e-6, $"{open.Sum(s => s.FlowM3PerH)} m³/h on {source.Code} at {moment}");
                Assert.Equal(open.Count, open.Select(s => s.Valve).Distinct().Count());
            }

            var water = plan.Water.Single(w => w.Source == source.Code);
            // Flows are printed to the hundredth, so water may differ by half of that an hour.
            Assert.InRange(water.PlannedM3 - sets.Sum(s => s.Hours * s.FlowM3PerH), -0.05 - (0.005 * sets.Sum(s => s.Hours)), 0.05 + (0.005 * sets.Sum(s => s.Hours)));
            Assert.True(water.LeftM3 >= -0.05, $"{water.LeftM3} m³ left of {source.Code}");
        }

        Assert.All(plan.Blocks, b => Assert.Equal(
            plan.Sets.Where(s => s.Valve == request.Blocks.Single(r => r.Code == b.Block).ValveCode).Sum(s => s.Hours), b.Hours, 9));
    }

    // The night a set belongs to: the day on which its window opened.
    public static DateOnly NightOf(PlannedSet set) =>
        DateOnly.FromDateTime(set.Start.Hour < 12 ? set.Start.Date.AddDays(-1) : set.Start.Date);

    private static void AssertInWindow(PlannedSet set, PlanSource source, PlanRequest request)
    {
        var opens = NightOf(set).ToDateTime(source.DailyFrom);
        var closes = NightOf(set).AddDays(1).ToDateTime(source.DailyTo);
        Assert.True(opens <= set.Start.DateTime && set.End.DateTime <= closes, $"{set.Valve} {set.Start}–{set.End} is outside {opens}–{closes}");
        Assert.True(set.Start >= request.AsOf, $"{set.Valve} opens {set.Start}, before the plan is made");
        Assert.Equal(set.Hours, (set.End - set.Start).TotalHours, 9);
        Assert.Equal(0, set.Hours * 4 % 1, 9);
    }
}
