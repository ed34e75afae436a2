using EstateWater.Simulation.Numbers;

namespace EstateWater.Simulation.Weather;

/// <summary>
/// Draws day after day of weather in the manner of Richardson (1981): wet and dry days as a two-state chain, temperature
/// anomalies that persist, and radiation and humidity that follow the sky; heat spells come on top.
/// </summary>
public sealed class WeatherGenerator(Site site, Climate climate, ulong seed)
{
    private const double Persistence = 0.68;
    private const double AnomalySdC = 3.1;

    /// <summary>Weather from a first through a last day; set spells happen whatever is drawn.</summary>
    public IReadOnlyList<DayWeather> Draw(DateOnly first, DateOnly last, IReadOnlyList<SetSpell> spells)
    {
        var dice = Dice.Of(seed, "weather");
        var days = new List<DayWeather>();
        var (wet, anomaly, spellLeft, spellHeat) = (false, 0.0, 0, 0.0);
        for (var date = first; date <= last; date = date.AddDays(1))
        {
            wet = dice.Chance(ChanceOfRain(date, wet));
            anomaly = (Persistence * anomaly) + dice.Normal(0, AnomalySdC * Math.Sqrt(1 - (Persistence * Persistence)));
            var spellStarts = dice.Chance(climate.HeatSpellChance * Math.Max(0, Climate.Warmth(date, site.IsSouthern)));
            if (spellLeft == 0 && spellStarts)
            {
                (spellLeft, spellHeat) = (dice.Whole(3, 5), dice.Between(3.5, 7));
            }

            var heat = spellLeft > 0 && !wet ? spellHeat : 0;
            spellLeft = Math.Max(0, spellLeft - 1);
            var day = Day(date, wet, anomaly + heat, dice);
            days.Add(spells.FirstOrDefault(s => Covers(s, date)) is { } spell ? Set(day, spell) : day);
        }

        return days;
    }

    private double ChanceOfRain(DateOnly date, bool wetBefore)
    {
        var share = Climate.WetShare(date, site.IsSouthern);
        return wetBefore ? share + (0.35 * (1 - share)) : share * 0.65;
    }

    private DayWeather Day(DateOnly date, bool wet, double anomaly, Dice dice)
    {
        var sky = wet ? dice.Between(0.25, 0.6) : Math.Min(0.77, dice.Normal(0.72, 0.05));
        var tMax = climate.UsualTMaxC(date, site.IsSouthern) + anomaly - (wet ? 4 : 0);
        var tMin = climate.UsualTMinC(date, site.IsSouthern) + (0.45 * anomaly) + dice.Normal(0, 1.6) + (wet ? 1.5 : 0);
        tMin = Math.Min(tMin, tMax - 3);
        var dewPoint = tMin - (wet ? 0.2 : 1.5) - Math.Max(0, 0.22 * (tMax - 28)) + dice.Normal(0, 1.0);
        var vapour = DayWeather.Saturation(dewPoint);
        var rain = wet ? dice.Exponential(climate.YearRainMm / 365 / 0.17 * (1 - (0.4 * Climate.Warmth(date, site.IsSouthern)))) : 0;
        return new DayWeather(
            date,
            tMax,
            tMin,
            Percent(vapour, tMin),
            Percent(vapour, tMax),
            Math.Max(0.4, dice.Normal(climate.SummerWindMPerS, 0.7)),
            Sun.ExtraterrestrialMj(date, site.LatitudeDegrees) * sky,
            rain);
    }

    private static double Percent(double vapourKPa, double celsius) =>
        Math.Clamp(100 * vapourKPa / DayWeather.Saturation(celsius), 6, 100);

    private static bool Covers(SetSpell spell, DateOnly date) =>
        date >= spell.FirstDay && date < spell.FirstDay.AddDays(spell.Days);

    /// <summary>A spell climbs to its peak and eases on its last day; the sky is clear and the air dry.</summary>
    private DayWeather Set(DayWeather day, SetSpell spell)
    {
        var position = day.Date.DayNumber - spell.FirstDay.DayNumber;
        var below = position == 0 || position == spell.Days - 1 ? 1.3 : 0.4 * ((spell.Days / 2) - position);
        var tMax = spell.PeakTMaxC - Math.Abs(below);
        var tMin = Math.Max(day.TMinC, tMax - 18);
        var vapour = Math.Min(day.VapourPressureKPa, 1.35);
        return day with
        {
            TMaxC = tMax,
            TMinC = tMin,
            RhMaxPct = Percent(vapour, tMin),
            RhMinPct = Percent(vapour, tMax),
            SolarMjPerM2 = Sun.ExtraterrestrialMj(day.Date, site.LatitudeDegrees) * 0.75,
            RainMm = 0,
        };
    }
}
