using System.Globalization;
using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Folder;
using EstateWater.Simulation.Management;
using EstateWater.Simulation.Observation;

namespace EstateWater.Simulation.Demo;

/// <summary>Lives the demo's two seasons up to its clock and writes the folder.</summary>
public static class DemoSeasons
{
    /// <summary>Writes the demo folder; the same bytes every time.</summary>
    public static void Write(string folder)
    {
        var (estate, crew) = Live();
        FolderWriter.Write(estate, crew, folder, DemoEstate.Clock);
        File.WriteAllText(Path.Combine(folder, "demo-clock.txt"), DemoEstate.Clock.ToString("yyyy-MM-dd'T'HH:mm:sszzz\n", CultureInfo.InvariantCulture));
    }

    /// <summary>The estate and its crew on the morning of the clock: rounds on Mondays, watering decided on Tuesdays.</summary>
    public static (SimulatedEstate Estate, FieldCrew Crew) Live(ulong seed = DemoEstate.Seed)
    {
        var estate = new SimulatedEstate(DemoEstate.Spec(seed), seed);
        var crew = new FieldCrew(estate) { Conditions = DemoEstate.Conditions };
        var blocksOf = estate.Spec.Blocks.GroupBy(b => b.Valve).ToDictionary(g => g.Key, g => g.Select(b => b.Code).ToList());
        var manager = new RuleOfThumb(estate, crew) { Habit = (valve, day, mm) => Habit(blocksOf[valve], day, mm) };
        IReadOnlyList<ValveOpening> week = [];
        while (estate.Today < DemoEstate.ClockDay)
        {
            if (estate.Today.DayOfWeek == DayOfWeek.Tuesday)
            {
                week = NightSchedule.Lay(estate.Spec, estate.Today, manager.WeekSets());
            }

            estate.AdvanceDay([.. week.Where(o => DateOnly.FromDateTime(o.StartedAt.DateTime) == estate.Today)]);
            if (estate.Today.DayOfWeek == DayOfWeek.Tuesday)
            {
                crew.ObserveWeek();
            }
        }

        return (estate, crew);
    }

    /// <summary>Thirsty blocks were forgotten in the last weeks; the deep flats always got more than they asked for.</summary>
    private static double Habit(IReadOnlyList<string> blocks, DateOnly day, double ruleMm)
    {
        var recent = day > DemoEstate.ClockDay.AddDays(-13);
        return blocks.Any(DemoEstate.Thirsty.Contains) && recent ? 0.5 * ruleMm
            : blocks.Any(DemoEstate.TooWet.Contains) && day > new DateOnly(2025, 11, 1) ? 25
            : (blocks.Contains(DemoEstate.BurstLine) || blocks.Contains(DemoEstate.BehindBlockedValve)) && day > new DateOnly(2025, 11, 20) ? 15
            : ruleMm;
    }
}
