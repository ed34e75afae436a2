using System.Globalization;
using System.Text;
using NetTopologySuite.Geometries;
using NetTopologySuite.Simplify;

namespace EstateWater.Web.Features.Estate;

/// <summary>The estate's blocks as drawing instructions, on a plane local to the estate: north is up, a metre is as long east as north.</summary>
public sealed class MapDrawing
{
    /// <summary>Width of the drawing. [drawing units]</summary>
    public const double Width = 1000;

    /// <summary>Bends smaller than this are not seen at the size of a screen. [drawing units]</summary>
    private const double Tolerance = 0.6;

    private const double Margin = 12;
    private const double SmallestLabel = 9;
    private const double LargestLabel = 26;

    /// <summary>A code of one letter is about this wide for its height.</summary>
    private const double LetterWidth = 0.62;

    private readonly double middleLatitude;
    private readonly double west;
    private readonly double north;
    private readonly double scale;

    private MapDrawing(Envelope degrees)
    {
        middleLatitude = degrees.Centre.Y * Math.PI / 180;
        west = degrees.MinX;
        north = degrees.MaxY;
        var east = degrees.Width * Math.Cos(middleLatitude);
        // A tall estate is fitted by its height, so that it stays on one screen.
        scale = (Width - 2 * Margin) / Math.Max(Math.Max(east, degrees.Height / 1.1), 1e-9);
        Height = degrees.Height * scale + 2 * Margin;
        Left = (Width - 2 * Margin - east * scale) / 2;
    }

    /// <summary>Height of the drawing. [drawing units]</summary>
    public double Height { get; }

    /// <summary>Value of the <c>viewBox</c>.</summary>
    public string ViewBox => $"0 0 {Text(Width)} {Text(Height)}";

    private double Left { get; }

    /// <summary>Draws on a plane that holds all outlines.</summary>
    /// <param name="outlines">WGS 84 outlines, at least one.</param>
    public static MapDrawing For(IEnumerable<Geometry> outlines)
    {
        var degrees = new Envelope();
        foreach (var outline in outlines)
        {
            degrees.ExpandToInclude(outline.EnvelopeInternal);
        }

        return new MapDrawing(degrees);
    }

    /// <summary>One block's shape and the place and size of its label.</summary>
    public BlockShape Shape(Geometry outline, string label)
    {
        var drawn = outline.Copy();
        drawn.Apply(new Projection(this));
        drawn.GeometryChanged();
        var simple = TopologyPreservingSimplifier.Simplify(drawn, Tolerance);
        var path = new StringBuilder();
        for (var i = 0; i < simple.NumGeometries; i++)
        {
            if (simple.GetGeometryN(i) is Polygon polygon)
            {
                Ring(path, polygon.ExteriorRing);
                foreach (var hole in polygon.InteriorRings)
                {
                    Ring(path, hole);
                }
            }
        }

        var place = simple.InteriorPoint.Coordinate;
        var box = simple.EnvelopeInternal;
        var size = Math.Min(Math.Min(LargestLabel, box.Height * 0.5), box.Width * 0.9 / (label.Length * LetterWidth));
        return new BlockShape(path.ToString(), Text(place.X), Text(place.Y + size * 0.35), size < SmallestLabel ? null : Text(Math.Floor(size)));
    }

    /// <summary>Where a place on the ground is drawn. [drawing units]</summary>
    /// <param name="place">Longitude and latitude. [degrees]</param>
    public (double X, double Y) At(Point place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return (Margin + Left + (place.X - west) * Math.Cos(middleLatitude) * scale, Margin + (north - place.Y) * scale);
    }

    /// <summary>Steps from point to point, in tenths of a unit: shorter than absolute places, and rounding never adds up.</summary>
    private static void Ring(StringBuilder path, LineString ring)
    {
        var points = ring.Coordinates;
        var (x, y) = (Tenths(points[0].X), Tenths(points[0].Y));
        path.Append('M').Append(Tenth(x)).Append(' ').Append(Tenth(y)).Append('l');
        foreach (var point in points.AsSpan(1, points.Length - 2))
        {
            var (nextX, nextY) = (Tenths(point.X), Tenths(point.Y));
            path.Append(Tenth(nextX - x)).Append(' ').Append(Tenth(nextY - y)).Append(' ');
            (x, y) = (nextX, nextY);
        }

        path[^1] = 'z';
    }

    private static long Tenths(double value) => (long)Math.Round(value * 10);

    private static string Tenth(long tenths) => (tenths / 10m).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private sealed class Projection(MapDrawing map) : ICoordinateSequenceFilter
    {
        public bool Done => false;

        public bool GeometryChanged => true;

        public void Filter(CoordinateSequence seq, int i)
        {
            var (x, y) = map.At(new Point(seq.GetX(i), seq.GetY(i)));
            seq.SetX(i, x);
            seq.SetY(i, y);
        }
    }
}

/// <summary>A block on the map.</summary>
/// <param name="Path">SVG path data.</param>
/// <param name="LabelX">Middle of the label.</param>
/// <param name="LabelY">Base line of the label.</param>
/// <param name="LabelSize">Height of its letters; null when the block is too small for one.</param>
public sealed record BlockShape(string Path, string LabelX, string LabelY, string? LabelSize);
