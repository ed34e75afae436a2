using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Outlook;

/// <summary>How a block's water use wanders through the season about what its canopy and the air let expect.</summary>
/// <remarks>
/// Trimming, disease, crop load, a neighbour's shade: no balance knows them all. The share by which the use is off at
/// knots twelve days apart follows an Ornstein–Uhlenbeck process, so what last weeks' readings showed fades slowly into
/// the coming days, and what lies ahead is less sure the further it lies. Ours in size and length.
/// </remarks>
[Method(
    "Water use that wanders",
    Source = "Uhlenbeck & Ornstein (1930), Physical Review 36:823–841: stationary Gaussian process with correlation exp(−t ∕ τ)",
    Check = "Spread and correlation between knots as the process has them")]
internal sealed class UseDrift
{
    /// <summary>How many knots a season has.</summary>
    public const int Knots = 18;

    /// <summary>Standard deviation of the share by which use is off.</summary>
    public const double SpreadShare = 0.45;

    /// <summary>After so many days 1/e of it is left. [d]</summary>
    public const double DaysToFade = 60;

    /// <summary>Days from knot to knot. [d]</summary>
    public const int DaysBetween = 12;

    // Vines are bare before: a season is counted from mid-winter.
    private const int FirstKnotDay = 80;

    // However wrong the canopy, leaves do not stop drinking.
    private const double LeastFactor = 0.2;

    private readonly double[][]? factors;

    private UseDrift(double[][]? factors) => this.factors = factors;

    /// <summary>None: a season long past, of which only the whole counts.</summary>
    public static UseDrift None { get; } = new(null);

    /// <summary>Of each member, from its standard normal numbers.</summary>
    public static UseDrift Of(double[][] unknowns)
    {
        var kept = Math.Exp(-DaysBetween / DaysToFade);
        var added = Math.Sqrt(1 - (kept * kept));
        var shares = new double[Knots][];
        for (var knot = 0; knot < Knots; knot++)
        {
            var spread = Unknowns.Spread[Unknowns.Shared + knot];
            var number = unknowns[Unknowns.Shared + knot];
            var before = knot == 0 ? null : shares[knot - 1];
            shares[knot] = [.. number.Select((z, m) => before is null ? spread * z : (kept * before[m]) + (added * spread * z))];
        }

        return new UseDrift([.. shares.Select(knot => knot.Select(share => Math.Max(LeastFactor, 1 + share)).ToArray())]);
    }

    /// <summary>Factor on the use of each member on a day counted from the season's first; null for one in all.</summary>
    public (double[] Earlier, double[] Later, double LaterShare)? On(int day)
    {
        if (factors is null)
        {
            return null;
        }

        var place = Math.Clamp((day - FirstKnotDay) / (double)DaysBetween, 0, Knots - 1);
        var knot = Math.Min((int)place, Knots - 2);
        return (factors[knot], factors[knot + 1], place - knot);
    }
}
