using System.Globalization;
using EstateWater.Planning.Accuracy;

namespace EstateWater.Web.Features.Accuracy;

/// <summary>Lays a block's latest sets side by side: what was expected as a bar from the tenth to the ninetieth percentile, what was read as a dot.</summary>
public sealed class HeldDrawing
{
    /// <summary>Size of the drawing, in its own units.</summary>
    public const int Width = 360, Height = 190;

    /// <summary>So many sets are legible on a phone.</summary>
    public const int MostSets = 12;

    private const double Left = 30, Right = 6, Top = 8, Bottom = 24;
    private const int DatesApart = 3;

    private readonly IReadOnlyList<HeldAgainst> held;
    private readonly int lowestBar, stepBar, steps;

    /// <summary>Of the latest sets.</summary>
    /// <param name="inOrder">In order of date; at least one.</param>
    public HeldDrawing(IReadOnlyList<HeldAgainst> inOrder)
    {
        held = [.. inOrder.TakeLast(MostSets)];
        var lowest = held.Min(h => Math.Min(h.Expected.P10, h.ReadBar));
        var highest = held.Max(h => Math.Max(h.Expected.P90, h.ReadBar));
        stepBar = highest - lowest > 10 ? 5 : 2;
        lowestBar = (int)Math.Floor(lowest / stepBar) * stepBar;
        steps = Math.Max(1, (int)Math.Ceiling((highest - lowestBar) / stepBar));
    }

    /// <summary>The lines across, with their tension. [bar]</summary>
    public IEnumerable<(int Bar, string Y)> Lines => Enumerable.Range(0, steps + 1).Select(i => (Bar: lowestBar + (i * stepBar), Text(YOf(lowestBar + (i * stepBar)))));

    /// <summary>The sets, with where they stand.</summary>
    public IEnumerable<HeldMark> Marks => held.Select((h, i) => new HeldMark(
        h,
        Text(Left + ((i + 0.5) * Slot)),
        Text(YOf(h.Expected.P90)),
        Text(YOf(h.Expected.P10) - YOf(h.Expected.P90)),
        Text(YOf(h.Expected.P50)),
        Text(YOf(h.ReadBar)),
        // From the latest backwards, so that the latest has its date.
        (held.Count - 1 - i) % DatesApart == 0));

    private double Slot => (Width - Left - Right) / held.Count;

    private double YOf(double bar) => Height - Bottom - ((bar - lowestBar) / (steps * stepBar) * (Height - Top - Bottom));

    private static string Text(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}

/// <summary>One set of a drawing.</summary>
/// <param name="Held">The set, and what was expected of it.</param>
/// <param name="X">Its middle.</param>
/// <param name="BandTop">Where the band ends above.</param>
/// <param name="BandHeight">How tall it is.</param>
/// <param name="MiddleY">Where its middle lies.</param>
/// <param name="ReadY">Where the reading lies.</param>
/// <param name="HasDate">Whether its date is written under it.</param>
public sealed record HeldMark(HeldAgainst Held, string X, string BandTop, string BandHeight, string MiddleY, string ReadY, bool HasDate);
