using EstateWater.Web.Parts.Drawing;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Soil;

/// <summary>Draws a tube's latest days: water content to the right, depth downward, one line a day, told apart by dash and mark.</summary>
public sealed class ProfileDrawing
{
    /// <summary>Size of the drawing, in its own units.</summary>
    public const int Width = 360, Height = 320;

    /// <summary>More lines are not told apart.</summary>
    public const int MostDays = 4;

    private const double Left = 44, Right = 350, Top = 40, Bottom = 308;

    /// <summary>Of a tube.</summary>
    /// <param name="series">The tube.</param>
    /// <param name="units">The reader's units.</param>
    public ProfileDrawing(TubeSeries series, UnitChoice units)
    {
        var shown = series.Profiles.TakeLast(MostDays).Reverse().ToList();
        ContentPct = LinearScale.Holding(shown.SelectMany(day => day.WaterContents).Select(content => 100 * content), Left, Right);
        double Shown(double depthM) => units.ShortLength.Show(100 * depthM);
        Depth = LinearScale.Holding(shown.SelectMany(day => day.DepthsM).Select(Shown).Prepend(0), Top, Bottom, 6);
        Lines = [.. shown.Select((day, i) => new ProfileLine(day, i, [.. day.DepthsM.Select((depth, d) => (ContentPct.Place(100 * day.WaterContents[d]), Depth.Place(Shown(depth))))]))];
    }

    /// <summary>Water content, to the right. [%]</summary>
    public LinearScale ContentPct { get; }

    /// <summary>Depth, downward, in the reader's unit.</summary>
    public LinearScale Depth { get; }

    /// <summary>The latest day first.</summary>
    public IReadOnlyList<ProfileLine> Lines { get; }
}

/// <summary>One day of a tube.</summary>
/// <param name="Profile">What was read.</param>
/// <param name="Rank">0 for the latest day: decides dash and mark.</param>
/// <param name="Points">Where the readings lie, from the top down.</param>
public sealed record ProfileLine(TubeProfile Profile, int Rank, IReadOnlyList<(string X, string Y)> Points)
{
    /// <summary>Its mark.</summary>
    public string Mark => MarkShape.All[Rank];

    /// <summary>Value of the attribute <c>points</c>.</summary>
    public string Polyline => string.Join(' ', Points.Select(point => $"{point.X},{point.Y}"));
}
