using System.Globalization;
using EstateWater.Web.Features.Estate;
using NetTopologySuite.Geometries;

namespace EstateWater.Tests.Web.EstatePages;

public sealed class MapDrawingTests
{
    [Fact]
    public void A_metre_east_is_as_long_as_a_metre_north()
    {
        // A square on the ground at 60° north: twice as many degrees wide as high, because cos 60° = 1∕2.
        var square = Box(10, 60 - 0.005, 10.02, 60 + 0.005);
        var (_, _, width, height) = Extent(MapDrawing.For([square]).Shape(square, "A").Path);
        Assert.Equal(1.0, width / height, 3);
    }

    [Fact]
    public void North_is_up()
    {
        var (south, north) = (Box(19, -34, 19.01, -33.99), Box(19, -33.98, 19.01, -33.97));
        var map = MapDrawing.For([south, north]);
        Assert.True(Extent(map.Shape(north, "N").Path).Y < Extent(map.Shape(south, "S").Path).Y);
    }

    [Fact]
    public void Every_part_of_a_block_and_its_holes_are_drawn()
    {
        var holed = new Polygon(Ring(0, 0, 0.01, 0.01), [Ring(0.004, 0.004, 0.006, 0.006)]);
        var both = new MultiPolygon([holed, Box(0.02, 0, 0.03, 0.01)]);
        Assert.Equal(3, MapDrawing.For([both]).Shape(both, "A").Path.Count(letter => letter == 'M'));
    }

    [Fact]
    public void A_block_too_small_for_its_code_has_no_label()
    {
        var (large, small) = (Box(0, 0, 0.05, 0.05), Box(0.051, 0, 0.0515, 0.0005));
        var map = MapDrawing.For([large, small]);
        Assert.NotNull(map.Shape(large, "B01").LabelSize);
        Assert.Null(map.Shape(small, "B02").LabelSize);
    }

    private static Polygon Box(double west, double south, double east, double north) => new(Ring(west, south, east, north));

    private static LinearRing Ring(double west, double south, double east, double north) =>
        new([new(west, south), new(east, south), new(east, north), new(west, north), new(west, south)]);

    /// <summary>Left, top, width and height of a path of one ring.</summary>
    private static (double X, double Y, double Width, double Height) Extent(string path)
    {
        var numbers = path.Split(['M', 'l', 'z', ' '], StringSplitOptions.RemoveEmptyEntries).Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var (x, y) = (numbers[0], numbers[1]);
        var (xs, ys) = (new List<double> { x }, new List<double> { y });
        for (var i = 2; i < numbers.Length; i += 2)
        {
            xs.Add(x += numbers[i]);
            ys.Add(y += numbers[i + 1]);
        }

        return (xs.Min(), ys.Min(), xs.Max() - xs.Min(), ys.Max() - ys.Min());
    }
}
