namespace EstateWater.Web.Features.Compare;

/// <summary>Where the readings of all compared blocks are drawn: days of the season to the right, tension upward, one scale for all.</summary>
/// <param name="LastDay">Last day of the season that is drawn.</param>
/// <param name="LowBar">Tension at the lower edge. [bar]</param>
/// <param name="HighBar">Tension at the upper edge. [bar]</param>
public sealed record SeasonScale(int LastDay, double LowBar, double HighBar)
{
    /// <summary>Width of the picture.</summary>
    public const double Width = 280;

    /// <summary>Height of the picture.</summary>
    public const double Height = 132;

    private const double Edge = 6;
    private const double TextHeight = 14;
    private const int DaysBetweenTicks = 60;

    /// <summary>Days of the season that are named under the picture.</summary>
    public IEnumerable<int> Ticks => Enumerable.Range(0, (LastDay / DaysBetweenTicks) + 1).Select(i => i * DaysBetweenTicks);

    /// <summary>The scale that holds all these.</summary>
    public static SeasonScale For(IEnumerable<ComparedBlock> blocks)
    {
        var readings = blocks.SelectMany(b => b.Readings).ToList();
        if (readings.Count == 0)
        {
            return new SeasonScale(1, 0, 1);
        }

        var (low, high) = (Math.Floor(readings.Min(r => r.Set.MeanBar)), Math.Ceiling(readings.Max(r => r.Set.MeanBar)));
        return new SeasonScale(Math.Max(1, readings.Max(r => r.DayOfSeason)), low, high > low ? high : low + 1);
    }

    /// <summary>Place of a day, from the left.</summary>
    public double X(int day) => Math.Round(Edge + day * (Width - 2 * Edge) / LastDay, 1);

    /// <summary>Place of a tension, from the top.</summary>
    public double Y(double bar) => Math.Round(Edge + (HighBar - bar) / (HighBar - LowBar) * (Height - TextHeight - 2 * Edge), 1);
}
