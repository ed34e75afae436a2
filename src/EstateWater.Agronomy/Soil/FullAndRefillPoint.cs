using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>Profile water when full, when the vine can take no more, and when to refill.</summary>
/// <param name="FullMm">Drained after winter or a soaking. [mm]</param>
/// <param name="LowerMm">Lowest water the vine draws down to. [mm]</param>
/// <param name="AllowedDepletion">Share of the difference used before refilling, 0–1. [–]</param>
[Method(
    "Full and refill point of a soil profile",
    Source = "Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, pp. 156 and 282: highest after winter rain and drainage, and the plateau where no layer dries further, are the ends of the readily available water",
    Check = "By hand: 300 and 180 mm with 0.5 refill at 240 mm")]
public sealed record FullAndRefillPoint(double FullMm, double LowerMm, double AllowedDepletion)
{
    /// <summary>Refill at this profile water: full − MAD·(full − lower). [mm]</summary>
    public double RefillMm => FullMm - (AllowedDepletion * (FullMm - LowerMm));

    /// <summary>Whether a profile is due for water.</summary>
    /// <param name="profileMm">Profile water over the same span. [mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public bool IsDue(double profileMm) => Require.AtLeast(profileMm, 0, "mm") <= RefillMm;

    /// <summary>Finds both ends in a series of profiles over one span.</summary>
    /// <param name="profilesMm">In order of time, at least three, 0 or more. [mm]</param>
    /// <param name="allowedDepletion">0–1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, outside their range, or a series that never changes.</exception>
    /// <remarks>Full is the highest water that two readings running hold, so that a profile still draining does not count; lower is the lowest that two running come down to.</remarks>
    public static FullAndRefillPoint FromSeries(IReadOnlyList<double> profilesMm, double allowedDepletion)
    {
        Require.Values(profilesMm, 3);
        return Find(profilesMm, allowedDepletion)
            ?? throw new ArgumentOutOfRangeException(nameof(profilesMm), "Two readings running must hold a higher water than two others.");
    }

    /// <summary>As <see cref="FromSeries"/>, but null while the series does not tell both ends: too few readings, or no two pairs apart.</summary>
    /// <param name="profilesMm">In order of time, 0 or more. [mm]</param>
    /// <param name="allowedDepletion">0–1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside their range.</exception>
    public static FullAndRefillPoint? Find(IReadOnlyList<double> profilesMm, double allowedDepletion)
    {
        ArgumentNullException.ThrowIfNull(profilesMm);
        Require.InRange(allowedDepletion, 0, 1, "(share)");
        foreach (var profile in profilesMm)
        {
            Require.AtLeast(profile, 0, "mm", nameof(profilesMm));
        }

        if (profilesMm.Count < 3)
        {
            return null;
        }

        var pairs = profilesMm.Zip(profilesMm.Skip(1)).ToArray();
        var full = pairs.Max(p => Math.Min(p.First, p.Second));
        var lower = pairs.Min(p => Math.Max(p.First, p.Second));
        return full > lower ? new FullAndRefillPoint(full, lower, allowedDepletion) : null;
    }
}
