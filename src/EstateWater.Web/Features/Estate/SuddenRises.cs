using EstateWater.Agronomy.Statistics;
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
    /// <summary>Makes the median absolute deviation comparable with a standard deviation: Iglewicz and Hoaglin (1993), How to Detect and Handle Outliers, ASQC vol. 16, who call scores above <see cref="Outliers.ModifiedZLimit"/> outliers.</summary>
    private const double MadScale = 0.6745;

    /// <summary>Sets before the latest that make the trend.</summary>
    private const int TrendSets = 3;

    /// <summary>Older sets say nothing of this week's trend, and may be another season's. [days]</summary>
    public const int TrendDays = 42;

    /// <summary>Fewer neighbours than this give no median worth the name; common practice, no published source.</summary>
    private const int FewestNeighbours = 3;

    /// <summary>A set mean repeats no better than this: the standard error that ten leaves usually give. [bar]; common practice, no published source.</summary>
    private const double ErrorOfMeanBar = 0.3;

    /// <summary>A rise over the own trend counts from three standard errors of the prediction on.</summary>
    private const double TrendErrors = 3;

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
        if (change.OverTrendBar is not { } overTrend)
        {
            return null;
        }

        var neighbours = all.Where(other => AreNeighbours(change, other, stationOf)).Select(other => other.Bar).ToArray();
        if (neighbours.Length < FewestNeighbours)
        {
            return null;
        }

        var median = Descriptive.Median(neighbours);
        var spread = Math.Max(Descriptive.MedianAbsoluteDeviation(neighbours), MadScale * ErrorOfMeanBar);
        var z = MadScale * (change.Bar - median) / spread;
        return z <= Outliers.ModifiedZLimit
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
        var recent = history.Where(set => history[^1].Date.DayNumber - set.Date.DayNumber <= TrendDays).ToArray();
        return recent is [.., var before, var latest]
            ? new Change(before, latest, RiseOverTrend(recent.SkipLast(1).TakeLast(TrendSets).ToArray(), latest))
            : null;
    }

    /// <summary>How far the latest set lies above the least-squares line through the sets before it; null when there are too few of them or the rise is within the error of such a line.</summary>
    private static double? RiseOverTrend(ReadingSet[] trend, ReadingSet latest)
    {
        if (trend.Length < TrendSets)
        {
            return null;
        }

        var meanDay = trend.Average(set => (double)set.Date.DayNumber);
        var spread = trend.Sum(set => Math.Pow(set.Date.DayNumber - meanDay, 2));
        var slope = trend.Sum(set => (set.Date.DayNumber - meanDay) * set.RobustMeanBar) / spread;
        var ahead = latest.Date.DayNumber - meanDay;
        var rise = latest.RobustMeanBar - (trend.Average(set => set.RobustMeanBar) + slope * ahead);
        // Variance of a prediction from a straight line, as in Draper and Smith (1998), Applied Regression Analysis, chapter 1.
        var error = ErrorOfMeanBar * Math.Sqrt(1 + 1.0 / trend.Length + ahead * ahead / spread);
        return rise > TrendErrors * error ? rise : null;
    }

    private sealed record Change(ReadingSet Before, ReadingSet Latest, double? OverTrendBar)
    {
        public double Bar => Latest.RobustMeanBar - Before.RobustMeanBar;
    }
}
