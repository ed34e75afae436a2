using EstateWater.Simulation.Numbers;
using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Estate;

/// <summary>A smaller estate drawn from a seed, for whole simulated seasons in which someone else decides the water.</summary>
public static class RandomEstate
{
    private const int WeatherYears = 3;

    /// <summary>Draws an estate.</summary>
    /// <param name="seed">Everything follows from it.</param>
    /// <param name="blocks">How many blocks; each has its own valve, but every sixth shares its neighbour's.</param>
    /// <param name="southern">Whether high summer is in January.</param>
    /// <param name="year">Year in which the season's winter begins (south) or its summer lies (north).</param>
    public static EstateSpec Draw(ulong seed, int blocks, bool southern, int year)
    {
        var dice = Dice.Of(seed, "estate");
        var site = southern
            ? new Site(-34.4 + dice.Between(-1, 1), 139.2, 220, TimeZoneInfo.FindSystemTimeZoneById("Australia/Adelaide"))
            : new Site(37.1 + dice.Between(-1, 1), -120.4, 160, TimeZoneInfo.FindSystemTimeZoneById("America/Los_Angeles"));
        var from = new DateOnly(southern ? year : year - 1, southern ? 7 : 12, 1);
        var drawn = Enumerable.Range(0, blocks).Select(i => Block(i, Dice.Of(seed, "block", i))).ToList();
        var flow = drawn.Sum(b => b.DeclaredFlowM3PerH) / 3;
        return new EstateSpec
        {
            Name = FormattableString.Invariant($"Estate of seed {seed}"),
            Country = "nowhere",
            Site = site,
            Stations = [new StationSpec("home", 0, 0, site.ElevationM, 2, 0)],
            Sources = [new SourceSpec("pump", Math.Round(Math.Max(flow, drawn.Max(b => b.DeclaredFlowM3PerH) * 2.1)), new TimeOnly(20, 0), new TimeOnly(8, 0), Math.Round(drawn.Sum(b => b.Outline.AreaM2) * 0.28), null)],
            Valves = [.. drawn.Select(b => b.Valve).Distinct().Select(v => new ValveSpec(v, "pump", dice.Chance(0.7)))],
            Blocks = drawn,
            Targets = Targets.For(drawn),
            WeatherFrom = from.AddYears(-WeatherYears),
            WeatherTo = from.AddDays(370),
            From = from,
        };
    }

    private static BlockSpec Block(int index, Dice dice)
    {
        var ground = (GroundKind)dice.Whole(0, 4);
        var width = dice.Between(130, 200);
        var block = new BlockSpec
        {
            Code = FormattableString.Invariant($"R{index + 1:00}"),
            Station = "home",
            Valve = FormattableString.Invariant($"V{(index % 6 == 5 ? index : index + 1):00}"),
            IsWhite = dice.Chance(0.3),
            Measure = dice.Chance(0.4) ? Measure.Stem : Measure.Leaf,
            HasTube = dice.Chance(0.4),
            EmittersPerVine = dice.Chance(0.5) ? 2 : 3,
            Outline = Outline.Rectangle(index % 4 * 220, index / 4 * 160, width, dice.Between(90, 140)),
            Truth = BlockMaker.Truth(ground, dice.Between(0.28, 0.42), dice),
        };
        return BlockMaker.Declared(block, dice);
    }
}
