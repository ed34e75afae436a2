using System.Collections.Concurrent;
using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>The percentile of its own calendar days that a heat spell must pass at a station.</summary>
[Method("Calendar-day percentile of a station", Source = "CTX90pct: Perkins & Alexander (2013), J. Climate 26: 4500–4517, 15-day window", Check = "Hand-made years, on and off at the rule's count of years")]
public static class StationPercentile
{
    /// <summary>The percentile by date, for <see cref="HeatSpells.Find"/>; it gives null where the record is shorter than the rule wants. [°C]</summary>
    /// <param name="history">Highest temperature of measured days; forecasts stay out. [°C]</param>
    /// <param name="rule">Percentile, window and years.</param>
    public static Func<DateOnly, double?> For(IEnumerable<(DateOnly Date, double TMaxC)> history, HeatSpellRule rule)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(rule);
        var days = history.Select(d => (d.Date, Value: d.TMaxC)).ToArray();
        var known = new ConcurrentDictionary<(int Month, int Day), double?>();
        return date => rule.Percentile is { } percent ? known.GetOrAdd((date.Month, date.Day), _ => At(date, percent)) : null;

        double? At(DateOnly date, double percent) =>
            DayNormal.Of(days, date, rule.PercentileHalfWindowDays) is { } normal && normal.Years >= rule.PercentileMinYears
                ? normal.PercentileOfAnyRecord(percent)
                : null;
    }
}
