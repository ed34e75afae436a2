using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;

namespace EstateWater.Simulation.Weather;

/// <summary>The site's weather as one station feels it: warmer or cooler, a little of its own.</summary>
public static class StationAir
{
    public static IReadOnlyList<DayWeather> Of(IReadOnlyList<DayWeather> site, StationSpec station, ulong seed)
    {
        var dice = Dice.Of(seed, "station", station.Code);
        return [.. site.Select(day => Felt(day, station.WarmerC, dice))];
    }

    private static DayWeather Felt(DayWeather day, double warmerC, Dice dice)
    {
        var tMax = day.TMaxC + warmerC + dice.Normal(0, 0.3);
        var tMin = Math.Min(tMax - 2, day.TMinC + (0.5 * warmerC) + dice.Normal(0, 0.4));
        var vapour = day.VapourPressureKPa * Math.Exp(dice.Normal(0, 0.02));
        return day with
        {
            TMaxC = tMax,
            TMinC = tMin,
            RhMaxPct = Math.Clamp(100 * vapour / DayWeather.Saturation(tMin), 6, 100),
            RhMinPct = Math.Clamp(100 * vapour / DayWeather.Saturation(tMax), 6, 100),
            WindMPerS = Math.Max(0.3, day.WindMPerS + dice.Normal(0, 0.2)),
            RainMm = day.RainMm * dice.Between(0.85, 1.15),
        };
    }
}
