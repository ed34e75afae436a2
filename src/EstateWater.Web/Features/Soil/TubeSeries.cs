using EstateWater.Agronomy.Soil;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Soil;

/// <summary>One tube read on one day.</summary>
/// <param name="Date">The day.</param>
/// <param name="DepthsM">From the top down. [m]</param>
/// <param name="WaterContents">As many, 0–1. [m³/m³]</param>
public sealed record TubeProfile(DateOnly Date, IReadOnlyList<double> DepthsM, IReadOnlyList<double> WaterContents)
{
    /// <summary>Water content at a depth that was read; null when it was not. [m³/m³]</summary>
    public double? At(double depthM)
    {
        for (var i = 0; i < DepthsM.Count; i++)
        {
            if (Math.Abs(DepthsM[i] - depthM) < 0.001)
            {
                return WaterContents[i];
            }
        }

        return null;
    }
}

/// <summary>All that a tube told.</summary>
/// <param name="Tube">Which tube.</param>
/// <param name="Profiles">In order of time; at least one.</param>
public sealed record TubeSeries(string Tube, IReadOnlyList<TubeProfile> Profiles)
{
    /// <summary>Share of the water between full and lower point that is used before refilling. Common practice, no published source. [–]</summary>
    public const double AllowedDepletion = 0.5;

    /// <summary>A trend is read over so many of the latest days.</summary>
    public const int TrendDays = 8;

    /// <summary>Water is summed from the surface to here: the deepest reading of most days. [m]</summary>
    public double SpanM { get; } = Profiles.GroupBy(profile => profile.DepthsM[^1]).OrderByDescending(same => same.Count()).ThenByDescending(same => same.Key).First().Key;

    /// <summary>Full and refill point from all days; null while they do not tell both ends.</summary>
    public FullAndRefillPoint? Points => FullAndRefillPoint.Find([.. Profiles.Select(Mm).OfType<double>()], AllowedDepletion);

    /// <summary>The latest day.</summary>
    public TubeProfile Latest => Profiles[^1];

    /// <summary>Every depth that was read, from the top down. [m]</summary>
    public IReadOnlyList<double> DepthsM => [.. Profiles.SelectMany(profile => profile.DepthsM).Distinct().Order()];

    /// <summary>Water to the span; null on a day that was not read so deep. [mm]</summary>
    public double? Mm(TubeProfile profile) =>
        profile.DepthsM[^1] >= SpanM ? ProfileWater.ToDepthMm(profile.DepthsM, profile.WaterContents, SpanM) : null;

    /// <summary>What a depth tells over the latest days; null with fewer than three.</summary>
    public DepthTrend? TrendAt(double depthM) =>
        Profiles.TakeLast(TrendDays).Select(profile => profile.At(depthM)).OfType<double>().ToList() is { Count: >= 3 } contents
            ? DepthTrends.Of(contents)
            : null;

    /// <summary>The tubes of one block. Contents outside 0–1 are left out: they say that a calibration does not fit.</summary>
    /// <param name="ofBlock">The block's readings, in any order.</param>
    /// <param name="waterContents">Turns them into water.</param>
    /// <param name="today">Later readings are not known yet.</param>
    internal static IReadOnlyList<TubeSeries> Of(IEnumerable<SoilMoisture> ofBlock, WaterContents waterContents, DateOnly today) =>
        [.. ofBlock
            .Where(reading => reading.Date <= today && reading.DepthCm > 0)
            .Select(reading => (Reading: reading, Content: waterContents.Of(reading)))
            .Where(pair => pair.Content is >= 0 and <= 1)
            .GroupBy(pair => pair.Reading.Tube)
            .OrderBy(tube => tube.Key, StringComparer.Ordinal)
            .Select(tube => new TubeSeries(tube.Key, [.. tube
                .GroupBy(pair => pair.Reading.Date)
                .OrderBy(day => day.Key)
                .Select(day => Profile(day.Key, day.Select(pair => (pair.Reading.DepthCm / 100, pair.Content!.Value))))]))];

    private static TubeProfile Profile(DateOnly date, IEnumerable<(double DepthM, double Content)> readings)
    {
        var depths = readings.GroupBy(reading => reading.DepthM).OrderBy(depth => depth.Key).ToList();
        return new TubeProfile(date, [.. depths.Select(depth => depth.Key)], [.. depths.Select(depth => depth.Average(reading => reading.Content))]);
    }
}
