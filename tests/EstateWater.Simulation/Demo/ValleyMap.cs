using EstateWater.Simulation.Estate;

namespace EstateWater.Simulation.Demo;

/// <summary>
/// Lays blocks along a winding creek: bands that follow the contours on both banks, cut across by tracks at uneven
/// distances and angles. A place is given along the creek and out from it; both bend with the valley.
/// </summary>
public static class ValleyMap
{
    private const double HalfTrackM = 4.5;
    private const int EdgePieces = 6;

    /// <summary>A band of blocks: how far out it runs, and where tracks cut it along the creek.</summary>
    public sealed record Band(double InnerM, double OuterM, double Phase, IReadOnlyList<double> CutsM);

    /// <summary>The block between two cuts of a band.</summary>
    public static Outline Block(Band band, int index)
    {
        var (left, right) = (band.CutsM[index], band.CutsM[index + 1]);
        var inner = Edge(band, band.InnerM, left + Slant(left, -1), right + Slant(right, -1));
        var outer = Edge(band, band.OuterM, left + Slant(left, 1), right + Slant(right, 1));
        var ring = index % 4 == 2 ? inner.Concat(outer.SkipLast(1).Reverse()) : inner.Concat(outer.AsEnumerable().Reverse());
        return new Outline([[.. ring]]);
    }

    /// <summary>A block that a gully cuts in two.</summary>
    public static Outline SplitBlock(Band band, int index, double gullyM)
    {
        var middle = (band.CutsM[index] + band.CutsM[index + 1]) / 2;
        var lower = band with { CutsM = [band.CutsM[index], middle - (gullyM / 2)] };
        var upper = band with { CutsM = [middle + (gullyM / 2), band.CutsM[index + 1]] };
        return new Outline([.. Block(lower, 0).Rings, .. Block(upper, 0).Rings]);
    }

    /// <summary>A place on the ground.</summary>
    public static Point Place(double alongM, double outM)
    {
        var (wave, height) = (2 * Math.PI / 2300, 150.0);
        var slope = height * wave * Math.Cos(wave * alongM);
        var length = Math.Sqrt(1 + (slope * slope));
        var north = height * Math.Sin(wave * alongM);
        return new Point(alongM - (outM * slope / length), north + (outM / length));
    }

    private static List<Point> Edge(Band band, double outM, double leftM, double rightM)
    {
        var (from, to) = (leftM + HalfTrackM, rightM - HalfTrackM);
        return [.. Enumerable.Range(0, EdgePieces + 1).Select(i =>
        {
            var along = from + ((to - from) * i / EdgePieces);
            var wobble = (9 * Math.Sin((along / 95) + band.Phase)) + (5 * Math.Sin((along / 41) + (outM / 60)));
            return Place(along, outM + wobble);
        })];
    }

    /// <summary>Tracks lean one way or the other; the lean depends on the place alone, so that neighbours share it.</summary>
    private static double Slant(double cutM, int side) => side * 14 * Math.Sin(cutM / 37);
}
