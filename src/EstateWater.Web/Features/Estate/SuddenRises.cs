using EstateWater.Agronomy.WaterStatus;
using EstateWater.Web.Features.Readings;

namespace EstateWater.Web.Features.Estate;

/// <summary>A block whose latest set rose against its own trend and against its neighbours: often a blocked line, a shut valve or a mistaken reading.</summary>
/// <param name="BlockCode">The block.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="Date">Day of the latest set.</param>
/// <param name="FromBar">Mean of the set before. [bar]</param>
/// <param name="ToBar">Mean of the latest set. [bar]</param>
/// <param name="OverTrendBar">Above what its own last sets led to expect. [bar]</param>
/// <param name="NeighboursBar">Median change of its neighbours over the same time. [bar]</param>
/// <param name="RobustZ">Distance of its change from theirs, as a modified z-score.</param>
public sealed record SuddenRise(
    string BlockCode,
    WaterPotentialMeasure Measure,
    DateOnly Date,
    double FromBar,
    double ToBar,
    double OverTrendBar,
    double NeighboursBar,
    double RobustZ);

/// <summary>Finds blocks that were steady and jumped.</summary>
public static class SuddenRises
{
    /// <summary>Modified z-scores above 3.5 are called outliers by Iglewicz and Hoaglin (1993), How to Detect and Handle Outliers, ASQC vol. 16.</summary>
    private const double OutlierZ = 3.5;

    /// <summary>Makes the median absolute deviation comparable with a standard deviation; the same source.</summary>
    private const double MadScale = 0.6745;

    /// <summary>Sets before the latest that make the trend.</summary>
    private const int TrendSets = 3;

    /// <summary>Fewer neighbours than this give no median worth the name; common practice, no published source.</summary>
    private const int FewestNeighbours = 3;

    /// <summary>Set means repeat no better than this, so neighbours that agree more closely count as spread this far. [bar]; common practice, no published source.</summary>
    private const double LeastSpreadBar = 0.3;

    /// <summary>A rise over the own trend that is smaller is not told apart from reading error. [bar]; common practice, no published source.</summary>
    private const double LeastRiseBar = 1.0;

    /// <summary>Rounds of readings take up to this long, so sets this close belong to the same week. [days]</summary>
    private const int SameRoundDays = 3;

    /// <summary>Blocks that rose suddenly, the strongest first.</summary>
    /// <param name="sets">All reading sets of the estate.</param>
    /// <param name="stationOf">Weather station by block code.</param>
    /// <param name="today">The estate's day; sets older than <paramref name="recentDays"/> are no news.</param>
    /// <param name="recentDays">How old the latest set may be. [days]</param>
    public static IReadOnlyList<SuddenRise> Find(
        IEnumerable<ReadingSet> sets, IReadOnlyDictionary<string, string> stationOf, DateOnly today, int recentDays = 10)
    {
        var changes = sets
            .GroupBy(set => (set.BlockCode, set.Measure))
            .Select(group => LatestChange([.. group.OrderBy(set => set.Date)]))
            .OfType<Change>()
            .Where(change => today.DayNumber - change.Latest.Date.DayNumber <= recentDays)
            .ToList();
        return [.. changes.Select(change => Judge(change, changes, stationOf)).OfType<SuddenRise>().OrderByDescending(rise => rise.RobustZ)];
    }

    private static SuddenRise? Judge(Change change, List<Change> all, IReadOnlyDictionary<string, string> stationOf)
    {
        if (change.OverTrendBar is not { } overTrend || overTrend < LeastRiseBar)
        {
            return null;
        }

        var neighbours = all.Where(other => AreNeighbours(change, other, stationOf)).Select(other => other.Bar).ToArray();
        if (neighbours.Length < FewestNeighbours)
        {
            return null;
        }

        var median = Median(neighbours);
        var spread = Math.Max(Median([.. neighbours.Select(bar => Math.Abs(bar - median))]), MadScale * LeastSpreadBar);
        var z = MadScale * (change.Bar - median) / spread;
        return z <= OutlierZ
            ? null
            : new SuddenRise(
                change.Latest.BlockCode, change.Latest.Measure, change.Latest.Date,
                change.Before.MeanBar, change.Latest.MeanBar, overTrend, median, z);
    }

    private static bool AreNeighbours(Change one, Change other, IReadOnlyDictionary<string, string> stationOf) =>
        one.Latest.BlockCode != other.Latest.BlockCode
        && one.Latest.Measure == other.Latest.Measure
        && stationOf[one.Latest.BlockCode] == stationOf[other.Latest.BlockCode]
        && DaysApart(one.Latest, other.Latest) <= SameRoundDays
        && DaysApart(one.Before, other.Before) <= SameRoundDays;

    private static int DaysApart(ReadingSet a, ReadingSet b) => Math.Abs(a.Date.DayNumber - b.Date.DayNumber);

    private static Change? LatestChange(ReadingSet[] history)
    {
        if (history is not [.., var before, var latest])
        {
            return null;
        }

        var trend = history.SkipLast(1).TakeLast(TrendSets).ToArray();
        double? overTrend = trend.Length < TrendSets ? null : latest.MeanBar - Extrapolate(trend, latest.Date);
        return new Change(before, latest, overTrend);
    }

    /// <summary>The least-squares line through the sets, read at a day.</summary>
    private static double Extrapolate(ReadingSet[] sets, DateOnly day)
    {
        var meanDay = sets.Average(set => (double)set.Date.DayNumber);
        var meanBar = sets.Average(set => set.MeanBar);
        var spread = sets.Sum(set => (set.Date.DayNumber - meanDay) * (set.Date.DayNumber - meanDay));
        var slope = sets.Sum(set => (set.Date.DayNumber - meanDay) * (set.MeanBar - meanBar)) / spread;
        return meanBar + slope * (day.DayNumber - meanDay);
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        var middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }

    private sealed record Change(ReadingSet Before, ReadingSet Latest, double? OverTrendBar)
    {
        public double Bar => Latest.MeanBar - Before.MeanBar;
    }
}
