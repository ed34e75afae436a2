using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;
using static EstateWater.Simulation.Folder.CsvFile;

namespace EstateWater.Simulation.Folder;

/// <summary>Water put on: hours as confirmed, and what the meter showed where one is read.</summary>
internal static class AppliedWaterFile
{
    public static void Write(SimulatedEstate estate, string folder, DateTimeOffset asOf)
    {
        var file = new CsvFile("valve,started_at,hours,meter_m3,confirmed_by,note");
        foreach (var opening in estate.Openings.Where(o => o.StartedAt.AddHours(o.Hours) <= asOf))
        {
            var dice = Dice.Of(estate.Seed, "meter", opening.Valve, opening.StartedAt.UtcTicks);
            file.Row(opening.Valve, opening.StartedAt, opening.Hours, Meter(estate, opening, dice), dice.Chance(0.5) ? "LP" : "DW", null);
        }

        file.Save(folder, "applied-water.csv");
    }

    private static string? Meter(SimulatedEstate estate, ValveOpening opening, Dice dice)
    {
        if (!estate.Spec.Valves.First(v => v.Code == opening.Valve).HasMeter)
        {
            return null;
        }

        var declared = estate.Spec.Blocks.Where(b => b.Valve == opening.Valve).Sum(b => b.DeclaredFlowM3PerH) * opening.Hours;
        var through = estate.ThroughShare(opening.Valve, DateOnly.FromDateTime(opening.StartedAt.DateTime));
        return Number(declared * through * (1 + dice.Normal(0, 0.015)), 1);
    }
}
