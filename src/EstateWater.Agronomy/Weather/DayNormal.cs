using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>What is usual for a calendar day at a station: all years' values within some days of it, pooled.</summary>
/// <remarks>Not a climate normal in WMO's sense (WMO-No. 1203: thirty years): say the number of years beside it.</remarks>
[Method("Usual value of a calendar day", Source = "Pooled ±7-day window as for CTX90pct (Perkins & Alexander 2013, J. Climate 26: 4500–4517); wording after WMO-No. 1203 (2017)", Check = "Hand-made years; count of the window across leap days and the turn of the year")]
public sealed class DayNormal
{
    /// <summary>Years below which no percentile is given.</summary>
    public const int YearsForPercentiles = 5;

    private readonly double[] values;

    private DayNormal(double[] values, int years)
    {
        this.values = values;
        Years = years;
    }

    /// <summary>Values pooled.</summary>
    public int Count => values.Length;

    /// <summary>Years that gave at least one of them.</summary>
    public int Years { get; }

    /// <summary>Their mean, in the unit of the values.</summary>
    public double Mean => values.Average();

    /// <summary>Pools what lies near a calendar day; null when nothing does.</summary>
    /// <param name="history">The station's days.</param>
    /// <param name="day">Any date of that calendar day; its year does not matter.</param>
    /// <param name="halfWindowDays">Days either side, 0 to 45. [d]</param>
    /// <remarks>29 February counts as 28 February. The window runs across the turn of the year.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static DayNormal? Of(IEnumerable<(DateOnly Date, double Value)> history, DateOnly day, int halfWindowDays = 7)
    {
        ArgumentNullException.ThrowIfNull(history);
        Require.InRange(halfWindowDays, 0, 45, "d");
        var wanted = CommonDay(day);
        var pooled = new List<double>();
        var years = new HashSet<int>();
        foreach (var (date, value) in history)
        {
            var distance = CommonDay(date) - wanted;
            var wrap = distance > 182 ? 1 : distance < -182 ? -1 : 0;
            if (Math.Abs(distance - (wrap * 365)) <= halfWindowDays)
            {
                pooled.Add(Require.Finite(value, "the unit of the values"));
                years.Add(date.Year + wrap);
            }
        }

        return pooled.Count == 0 ? null : new DayNormal([.. pooled], years.Count);
    }

    /// <summary>A percentile of the pooled values; null with fewer than five years.</summary>
    /// <param name="percent">0 to 100. [%]</param>
    /// <param name="type">How to read between ranks.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public double? Percentile(double percent, QuantileType type = QuantileType.Spreadsheet7) =>
        Years < YearsForPercentiles ? null : PercentileOfAnyRecord(percent, type);

    /// <summary>A percentile however short the record; the caller says how short it is.</summary>
    /// <param name="percent">0 to 100. [%]</param>
    /// <param name="type">How to read between ranks.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public double PercentileOfAnyRecord(double percent, QuantileType type = QuantileType.Spreadsheet7) => Quantile.Of(values, percent, type);

    private static int CommonDay(DateOnly date) =>
        DateTime.IsLeapYear(date.Year) && date.DayOfYear >= 60 ? date.DayOfYear - 1 : date.DayOfYear;
}
