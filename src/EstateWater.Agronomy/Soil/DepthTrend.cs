using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>What a depth of a profile tells over several readings.</summary>
public enum DepthTrend
{
    /// <summary>It rises and falls: water comes and roots take it.</summary>
    RootsActive,

    /// <summary>It never falls: more water than the roots there take.</summary>
    NeverFalls,

    /// <summary>It never rises: water does not come so far.</summary>
    NeverRises,

    /// <summary>It does not change.</summary>
    Still,
}

/// <summary>Reads the trend of one depth.</summary>
[Method(
    "Reading a soil profile depth by depth",
    Source = "Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 282",
    Check = "The four cases by hand-made series")]
public static class DepthTrends
{
    /// <summary>The trend of water contents at one depth.</summary>
    /// <param name="waterContents">In order of time, at least three, 0–1. [m³/m³]</param>
    /// <param name="changeM3PerM3">Smallest change that is not noise, above 0. [m³/m³]</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, or outside their range.</exception>
    public static DepthTrend Of(IReadOnlyList<double> waterContents, double changeM3PerM3 = 0.005)
    {
        Require.Values(waterContents, 3);
        Require.Above(changeM3PerM3, 0, "m³/m³");
        foreach (var content in waterContents)
        {
            Require.InRange(content, 0, 1, "m³/m³", nameof(waterContents));
        }

        double highest = waterContents[0], lowest = waterContents[0];
        bool falls = false, rises = false;
        foreach (var content in waterContents)
        {
            falls |= highest - content > changeM3PerM3;
            rises |= content - lowest > changeM3PerM3;
            highest = Math.Max(highest, content);
            lowest = Math.Min(lowest, content);
        }

        return (falls, rises) switch
        {
            (true, true) => DepthTrend.RootsActive,
            (false, true) => DepthTrend.NeverFalls,
            (true, false) => DepthTrend.NeverRises,
            _ => DepthTrend.Still,
        };
    }

    /// <summary>The trend in words.</summary>
    /// <param name="trend">The trend.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a trend.</exception>
    public static string Words(DepthTrend trend) => trend switch
    {
        DepthTrend.RootsActive => "Rises and falls: roots are active here.",
        DepthTrend.NeverFalls => "Never falls: more water comes than roots take; sets may be too long.",
        DepthTrend.NeverRises => "Never rises: water does not come so far; sets may be too short.",
        DepthTrend.Still => "No change: neither water nor roots, or always wet.",
        _ => throw new ArgumentOutOfRangeException(nameof(trend), trend, "Expected a trend."),
    };
}
