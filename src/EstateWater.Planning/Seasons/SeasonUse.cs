namespace EstateWater.Planning.Seasons;

/// <summary>Water of a season from today on.</summary>
/// <param name="TotalM3">All of it. [m³]</param>
/// <param name="RipeningLaterM3">The part put on between veraison and harvest, past the days that a plan decides. [m³]</param>
internal readonly record struct SeasonUse(double TotalM3, double RipeningLaterM3)
{
    public static SeasonUse operator +(SeasonUse a, SeasonUse b) => new(a.TotalM3 + b.TotalM3, a.RipeningLaterM3 + b.RipeningLaterM3);

    public static SeasonUse operator *(double factor, SeasonUse use) => new(factor * use.TotalM3, factor * use.RipeningLaterM3);

    /// <summary>Never more than another use.</summary>
    public SeasonUse AtMost(SeasonUse other) => new(Math.Min(TotalM3, other.TotalM3), Math.Min(RipeningLaterM3, other.RipeningLaterM3));
}
