using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Finds heat spells in a run of days, past or ahead.</summary>
[Method("Heat spells", Source = "Rule of this program after Perkins & Alexander (2013), J. Climate 26: 4500–4517 (three days, 15-day window, 90th percentile), Collins et al. (2000) (35 °C) and Greer & Weedon (2013), Front. Plant Sci. 4: 491 (40 °C)", Check = "Hand-made runs at, above and below each limit")]
public static class HeatSpells
{
    /// <summary>The spells, in date order.</summary>
    /// <param name="days">Highest temperature by day, each date once, in any order; null where it is missing. [°C]</param>
    /// <param name="rule">What counts.</param>
    /// <param name="percentile">The station's own percentile by calendar day; null, or null for a day, leaves the threshold alone to decide. [°C]</param>
    /// <remarks>Equal to a limit counts as hot. A missing day, or a date left out, ends a spell: what is not known is not bridged.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A temperature outside −60 to 60 °C.</exception>
    /// <exception cref="ArgumentException">A date given twice.</exception>
    public static IReadOnlyList<HeatSpell> Find(
        IEnumerable<(DateOnly Date, double? TMaxC)> days, HeatSpellRule rule, Func<DateOnly, double?>? percentile = null)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(rule);
        var spells = new List<HeatSpell>();
        var run = new List<(DateOnly Date, double TMaxC)>();
        DateOnly? previous = null;
        foreach (var (date, tMax) in days.OrderBy(d => d.Date))
        {
            if (date == previous)
            {
                throw new ArgumentException($"{date:O} is given twice.", nameof(days));
            }

            if (tMax is null || (previous is { } before && date.DayNumber - before.DayNumber > 1))
            {
                Close(run, rule, spells);
            }

            previous = date;
            if (tMax is { } celsius && IsHot(date, WeatherInput.AirTemperature(celsius, "TMaxC"), rule, percentile))
            {
                CloseWhenTooFar(run, date, rule, spells);
                run.Add((date, celsius));
            }
        }

        Close(run, rule, spells);
        return spells;
    }

    private static bool IsHot(DateOnly date, double tMaxC, HeatSpellRule rule, Func<DateOnly, double?>? percentile) =>
        tMaxC >= rule.ThresholdC && (rule.Percentile is null || percentile?.Invoke(date) is not { } own || tMaxC >= own);

    private static void CloseWhenTooFar(List<(DateOnly Date, double TMaxC)> run, DateOnly date, HeatSpellRule rule, List<HeatSpell> spells)
    {
        if (run.Count > 0 && date.DayNumber - run[^1].Date.DayNumber - 1 > rule.BridgeGapDays)
        {
            Close(run, rule, spells);
        }
    }

    private static void Close(List<(DateOnly Date, double TMaxC)> run, HeatSpellRule rule, List<HeatSpell> spells)
    {
        if (run.Count >= rule.MinDays)
        {
            var severe = run.Count(d => d.TMaxC >= rule.SevereC) >= rule.SevereDays || run.Any(d => d.TMaxC >= rule.ExtremeC);
            var (from, to) = (run[0].Date, run[^1].Date);
            spells.Add(new HeatSpell(from, to, run.Max(d => d.TMaxC), to.DayNumber - from.DayNumber + 1, severe));
        }

        run.Clear();
    }
}
