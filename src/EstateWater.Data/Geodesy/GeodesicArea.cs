using NetTopologySuite.Geometries;

namespace EstateWater.Data.Geodesy;

/// <summary>
/// Areas on the WGS 84 ellipsoid. The sides run straight in longitude and latitude, as RFC 7946 (3.1.1) defines them;
/// over the few hundred metres of a block this and the geodesic are the same line to well below a millimetre.
/// </summary>
public static class GeodesicArea
{
    // WGS 84: NIMA TR8350.2 (2000), table 3.1: semi-major axis [m] and flattening.
    private const double A = 6378137.0;
    private const double F = 1 / 298.257223563;
    private static readonly double E2 = F * (2 - F);
    private static readonly double E = Math.Sqrt(E2);

    // Gauss–Legendre, three points on 0–1: exact for polynomials of degree 5.
    private static readonly (double At, double Weight)[] Nodes =
    [
        (0.5 - (Math.Sqrt(0.6) / 2), 5.0 / 18), (0.5, 8.0 / 18), (0.5 + (Math.Sqrt(0.6) / 2), 5.0 / 18),
    ];

    /// <summary>Area of a Polygon or MultiPolygon, holes left out. [m²]</summary>
    /// <param name="outline">Longitude, latitude. [degrees, WGS 84]</param>
    /// <exception cref="ArgumentException">It is neither a Polygon nor a MultiPolygon.</exception>
    public static double SquareMetres(Geometry outline) => outline switch
    {
        Polygon polygon => Ring(polygon.ExteriorRing) - polygon.InteriorRings.Sum(Ring),
        MultiPolygon parts => parts.Geometries.Sum(SquareMetres),
        null => throw new ArgumentNullException(nameof(outline)),
        _ => throw new ArgumentException($"A {outline.GeometryType} has no area; use a Polygon or MultiPolygon.", nameof(outline)),
    };

    // Green's theorem: the area is the integral of the zone area over longitude, once around.
    private static double Ring(LineString ring)
    {
        if (ring.IsEmpty)
        {
            return 0;
        }

        var coordinates = ring.Coordinates;
        var reference = ZoneArea(Radians(coordinates[0].Y));
        var sum = 0.0;
        for (var i = 1; i < coordinates.Length; i++)
        {
            var east = Radians(coordinates[i].X - coordinates[i - 1].X);
            sum += east * (MeanZoneArea(Radians(coordinates[i - 1].Y), Radians(coordinates[i].Y)) - reference);
        }

        return Math.Abs(sum);
    }

    // The mean of the zone area between two latitudes; steps of a degree keep the quadrature exact to rounding.
    private static double MeanZoneArea(double from, double to)
    {
        var steps = 1 + (int)(Math.Abs(to - from) / Radians(1));
        var step = (to - from) / steps;
        var sum = 0.0;
        for (var i = 0; i < steps; i++)
        {
            foreach (var (at, weight) in Nodes)
            {
                sum += weight * ZoneArea(from + ((i + at) * step));
            }
        }

        return sum / steps;
    }

    // Area from the equator to a latitude, per radian of longitude: a²q/2 with q of Snyder (1987), Map Projections: A Working Manual, eq. 3-12.
    private static double ZoneArea(double latitude)
    {
        var sin = Math.Sin(latitude);
        return A * A * (1 - E2) / 2 * ((sin / (1 - (E2 * sin * sin))) + (Math.Atanh(E * sin) / E));
    }

    private static double Radians(double degrees) => degrees * (Math.PI / 180);
}
