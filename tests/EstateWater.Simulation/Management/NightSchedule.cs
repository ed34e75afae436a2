using EstateWater.Simulation.Estate;

namespace EstateWater.Simulation.Management;

/// <summary>Lays sets into a week's nights, first come first served, under each source's flow and window; what does not fit is left out.</summary>
public static class NightSchedule
{
    private const double QuarterHour = 0.25;

    /// <summary>The week's openings, whose first night starts on <paramref name="first"/>.</summary>
    public static IReadOnlyList<ValveOpening> Lay(EstateSpec spec, DateOnly first, IReadOnlyList<(string Valve, double Hours)> sets)
    {
        var openings = new List<ValveOpening>();
        var nights = new List<(string Valve, int Night)>();
        foreach (var source in spec.Sources)
        {
            var used = new double[7, (int)(source.WindowHours / QuarterHour)];
            foreach (var (valve, hours) in sets.Where(s => spec.Valves.Any(v => v.Code == s.Valve && v.Source == source.Code)))
            {
                var flow = spec.Blocks.Where(b => b.Valve == valve).Sum(b => b.DeclaredFlowM3PerH);
                var taken = nights.Where(n => n.Valve == valve).Select(n => n.Night).ToHashSet();
                if (Place(used, source.MaxFlowM3PerH, flow, hours, n => !taken.Contains(n) && !taken.Contains(n - 1)) is { } slot)
                {
                    nights.Add((valve, slot.Night));
                    var hour = source.DailyFrom.ToTimeSpan().TotalHours + (slot.Quarter * QuarterHour);
                    openings.Add(new ValveOpening(valve, spec.Site.At(first.AddDays(slot.Night), hour), hours));
                }
            }
        }

        return openings;
    }

    private static (int Night, int Quarter)? Place(double[,] used, double limit, double flow, double hours, Func<int, bool> isFree)
    {
        var quarters = (int)Math.Round(hours / QuarterHour);
        for (var night = 0; night < used.GetLength(0); night++)
        {
            for (var start = 0; isFree(night) && start + quarters <= used.GetLength(1); start++)
            {
                if (Enumerable.Range(start, quarters).All(q => used[night, q] + flow <= limit))
                {
                    Enumerable.Range(start, quarters).ToList().ForEach(q => used[night, q] += flow);
                    return (night, start);
                }
            }
        }

        return null;
    }
}
