using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;
using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Demo;

/// <summary>The invented estate that the demo shows: a valley of 36 blocks with a dry summer, and what went well and wrong in it.</summary>
public static class DemoEstate
{
    public const ulong Seed = 20260416;

    /// <summary>The Tuesday on which the demo looks ahead.</summary>
    public static readonly DateOnly ClockDay = new(2026, 1, 20);

    public static readonly Site Site = new(-33.952, 138.947, 385, TimeZoneInfo.FindSystemTimeZoneById("Australia/Adelaide"));

    /// <summary>The demo instant.</summary>
    public static DateTimeOffset Clock => Site.At(ClockDay, 6);

    /// <summary>Block whose last readings were taken badly.</summary>
    public const string BadlyRead = "B5";

    /// <summary>Block behind a valve that blocks up.</summary>
    public const string BehindBlockedValve = "D5";

    /// <summary>Block whose drip line burst after the last but one round.</summary>
    public const string BurstLine = "A6";

    /// <summary>Block planted last winter, never read.</summary>
    public const string NewlyPlanted = "E4";

    /// <summary>Blocks left thirsty: near their ceiling with heat ahead.</summary>
    public static readonly IReadOnlyList<string> Thirsty = ["A3", "D3", "B8"];

    /// <summary>Blocks on deep ground that were watered too much: wet, tips growing.</summary>
    public static readonly IReadOnlyList<string> TooWet = ["C4", "C5"];

    /// <summary>The last round's set of the badly read block.</summary>
    public static readonly IReadOnlyDictionary<(string Block, DateOnly Day), ReadingCondition> Conditions =
        new Dictionary<(string, DateOnly), ReadingCondition>
        {
            [(BadlyRead, ClockDay.AddDays(-1))] = new ReadingCondition
            {
                HoursAfterNoon = 3.3,
                ShadedShare = 0.5,
                Spread = 3.6,
                LongestDelayS = 160,
                Note = "late, crew called away",
            },
        };

    public static EstateSpec Spec(ulong seed = Seed)
    {
        var blocks = DemoBlocks.Draw(seed);
        return new EstateSpec
        {
            Name = "Harrowbeck Vale",
            Country = "Australia",
            Site = Site,
            Stations = [new("creek", 900, -20, 362, 2, 0.2), new("ridge", 1050, 330, 431, 2, -0.3)],
            Sources =
            [
                new("Weir pump", 190, new TimeOnly(20, 0), new TimeOnly(7, 0), 72000, 0.7),
                new("Hill dam", 120, new TimeOnly(19, 0), new TimeOnly(8, 0), 36000, 0.4),
                new("Bore", 95, new TimeOnly(21, 0), new TimeOnly(9, 0), 30000, 1.4),
            ],
            Valves = [.. blocks.Select(b => b.Valve).Distinct().Order(StringComparer.Ordinal).Select(v => new ValveSpec(v, Source(v, blocks), v is not ("V04" or "V11" or "V17" or "V26")))],
            Blocks = blocks,
            Targets = Targets.For(blocks),
            SetSpells = [new SetSpell(ClockDay, 5, 31.5), new SetSpell(ClockDay.AddDays(5), 4, 38), new SetSpell(new DateOnly(2025, 12, 27), 3, 40.2)],
            Mishaps =
            [
                new Mishap(blocks.First(b => b.Code == BehindBlockedValve).Valve, ClockDay.AddDays(-15), 0.36, 1),
                new Mishap(blocks.First(b => b.Code == BurstLine).Valve, ClockDay.AddDays(-8), 1, 0.04),
            ],
            WeatherFrom = new DateOnly(2021, 7, 1),
            WeatherTo = ClockDay.AddDays(20),
            From = new DateOnly(2024, 7, 1),
        };
    }

    private static string Source(string valve, IReadOnlyList<BlockSpec> blocks) => blocks.First(b => b.Valve == valve).Code[0] switch
    {
        'B' or 'C' => "Weir pump",
        'D' => "Bore",
        _ => "Hill dam",
    };
}
