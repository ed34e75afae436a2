using EstateWater.Data.Geodesy;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO;

namespace EstateWater.Tests.Data;

public sealed class GeodesicAreaTests
{
    [Fact]
    public void The_whole_ellipsoid_is_the_sphere_of_equal_area()
    {
        // NIMA TR8350.2 (2000), table 3.3: radius of the sphere of equal area, 6371007.1809 m, printed to a tenth of a millimetre.
        const double radius = 6_371_007.1809;
        var area = GeodesicArea.SquareMetres(Read("POLYGON((-180 -90, 180 -90, 180 90, -180 90, -180 -90))"));

        Assert.Equal(radius, Math.Sqrt(area / (4 * Math.PI)), 0.00005);
    }

    [Fact]
    public void One_degree_at_the_equator_is_the_published_geodesic_area()
    {
        // The documentation of geographiclib-rs (Karney's algorithms) gives 12308778361.469452 m² for this square with geodesic sides.
        // The great ellipses that stand for them here lie beside them by centimetres: 1 part in 10⁶ of the area at most.
        var area = GeodesicArea.SquareMetres(Geodesics([(0, 0), (0, 1), (1, 1), (1, 0)]));

        Assert.Equal(12_308_778_361.469, area, 1e-6 * area);
    }

    [Fact]
    public void Antarctica_is_the_published_geodesic_area()
    {
        // The example of GeographicLib's geodesic.h: 13376856682207.4 m². Sides of hundreds of kilometres are cut into short ones along
        // great ellipses, which over such lengths lie tens of metres beside the geodesics: 1 part in 10⁴ of the area, a tenth of the error we allow.
        (double Latitude, double Longitude)[] coast =
        [
            (-72.9, -74), (-71.9, -102), (-74.9, -102), (-74.3, -131), (-77.5, -163), (-77.4, 163), (-71.7, 172), (-65.9, 140), (-65.7, 113),
            (-66.6, 88), (-66.9, 59), (-69.8, 25), (-70.0, -4), (-71.0, -14), (-77.3, -33), (-77.9, -46), (-74.7, -61),
        ];

        Assert.Equal(13_376_856_682_207.4, GeodesicArea.SquareMetres(AroundSouthPole(coast)), 1e-4 * 13_376_856_682_207.4);
    }

    [Fact]
    public void Between_parallels_and_meridians_the_area_is_that_of_the_zone()
    {
        // The area between two parallels by the exact integral of M·N·cos φ, summed here in steps of 0.0001° (midpoint rule).
        const double south = -33.9, north = -33.8, width = 0.1;
        var sum = 0.0;
        const int steps = 1000;
        for (var i = 0; i < steps; i++)
        {
            var latitude = (south + ((i + 0.5) * (north - south) / steps)) * Math.PI / 180;
            const double a = 6_378_137, f = 1 / 298.257223563, e2 = f * (2 - f);
            var w = 1 - (e2 * Math.Sin(latitude) * Math.Sin(latitude));
            sum += a * a * (1 - e2) / (w * w) * Math.Cos(latitude);
        }

        var expected = sum * (north - south) / steps * width * Math.Pow(Math.PI / 180, 2);
        var quad = FormattableString.Invariant($"POLYGON((19 {south}, {19 + width} {south}, {19 + width} {north}, 19 {north}, 19 {south}))");

        Assert.Equal(expected, GeodesicArea.SquareMetres(Read(quad)), 1e-9 * expected);
    }

    [Fact]
    public void A_hole_is_left_out_and_parts_add_up()
    {
        const string outer = "(19 -33.9, 19.01 -33.9, 19.01 -33.89, 19 -33.89, 19 -33.9)";
        const string hole = "(19.002 -33.898, 19.004 -33.898, 19.004 -33.896, 19.002 -33.896, 19.002 -33.898)";
        const string other = "(19.1 -33.9, 19.11 -33.9, 19.11 -33.89, 19.1 -33.9)";
        var (whole, inner, part) = (Area($"POLYGON({outer})"), Area($"POLYGON({hole})"), Area($"POLYGON({other})"));

        Assert.Equal(whole - inner, Area($"POLYGON({outer},{hole})"), 1e-6);
        Assert.Equal(whole - inner + part, Area($"MULTIPOLYGON(({outer},{hole}),({other}))"), 1e-6);
        Assert.Equal(0, Area("POLYGON EMPTY"));

        // One twenty-fifth of the outline, but for the shrinking of meridians towards the pole.
        Assert.Equal(whole / 25, inner, 0.001 * inner);
    }

    [Fact]
    public void The_turn_of_a_ring_and_the_hemisphere_do_not_matter()
    {
        var south = Area("POLYGON((19 -33.9, 19.01 -33.9, 19.01 -33.89, 19 -33.9))");

        Assert.Equal(south, Area("POLYGON((19 -33.9, 19.01 -33.89, 19.01 -33.9, 19 -33.9))"), 1e-6);
        Assert.Equal(south, Area("POLYGON((19 33.9, 19.01 33.9, 19.01 33.89, 19 33.9))"), 1e-6);
    }

    [Fact]
    public void What_has_no_area_is_refused() =>
        Assert.Throws<ArgumentException>(() => GeodesicArea.SquareMetres(Read("POINT(19 -33.9)")));

    private static double Area(string text) => GeodesicArea.SquareMetres(Read(text));

    private static Geometry Read(string text) => new WKTReader().Read(text);

    private static Polygon Geodesics((double Latitude, double Longitude)[] corners)
    {
        var ring = corners.Zip([.. corners[1..], corners[0]]).SelectMany(side => Side(side.First, side.Second)).ToList();
        ring.Add(ring[0].Copy());
        return new Polygon(new LinearRing([.. ring]));
    }

    // Cut where it crosses the 180th meridian, down to the pole and back up.
    private static Polygon AroundSouthPole((double Latitude, double Longitude)[] coast)
    {
        var ring = coast.Zip([.. coast[1..], coast[0]]).SelectMany(side => Side(side.First, side.Second)).ToList();
        var cut = Enumerable.Range(1, ring.Count - 1).First(i => Math.Abs(ring[i].X - ring[i - 1].X) > 180);
        var (before, after) = (ring[cut - 1], ring[cut]);
        var edge = Math.Sign(before.X) * 180.0;
        var latitude = before.Y + ((after.Y - before.Y) * (edge - before.X) / (after.X - before.X + (2 * edge)));
        List<Coordinate> closed =
        [
            new(-edge, -90), new(-edge, latitude), .. ring[cut..], .. ring[..cut], new(edge, latitude), new(edge, -90), new(-edge, -90),
        ];
        return new Polygon(new LinearRing([.. closed]));
    }

    // Points along the great ellipse: the section of the ellipsoid by the plane through both ends and its centre.
    private static IEnumerable<Coordinate> Side((double Latitude, double Longitude) from, (double Latitude, double Longitude) to)
    {
        const int pieces = 1000;
        var (a, b) = (Centric(from), Centric(to));
        var angle = Math.Acos(Math.Clamp(a.Zip(b).Sum(p => p.First * p.Second), -1, 1));
        for (var i = 0; i < pieces; i++)
        {
            var (wa, wb) = (Math.Sin((1 - (i / (double)pieces)) * angle), Math.Sin(i / (double)pieces * angle));
            yield return Geodetic([.. a.Zip(b).Select(p => ((wa * p.First) + (wb * p.Second)) / Math.Sin(angle))]);
        }
    }

    private const double AxisRatioSquared = (1 - (1 / 298.257223563)) * (1 - (1 / 298.257223563));

    private static double[] Centric((double Latitude, double Longitude) at)
    {
        var (latitude, longitude) = (Math.Atan(AxisRatioSquared * Math.Tan(at.Latitude * Math.PI / 180)), at.Longitude * Math.PI / 180);
        return [Math.Cos(latitude) * Math.Cos(longitude), Math.Cos(latitude) * Math.Sin(longitude), Math.Sin(latitude)];
    }

    private static Coordinate Geodetic(double[] v) => new(
        Math.Atan2(v[1], v[0]) * 180 / Math.PI,
        Math.Atan(v[2] / Math.Sqrt((v[0] * v[0]) + (v[1] * v[1])) / AxisRatioSquared) * 180 / Math.PI);
}
