using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Estate;

/// <summary>A point east and north of the estate's origin. [m]</summary>
public readonly record struct Point(double EastM, double NorthM);

/// <summary>The ground of a block: one or more rings, each open (the first point is not repeated).</summary>
public sealed record Outline(IReadOnlyList<IReadOnlyList<Point>> Rings)
{
    /// <summary>[m²]</summary>
    public double AreaM2 => Rings.Sum(r => Math.Abs(SignedArea(r)));

    /// <summary>A ring anticlockwise and closed, in degrees: longitude, latitude (RFC 7946).</summary>
    public static IEnumerable<(double Longitude, double Latitude)> InDegrees(IReadOnlyList<Point> ring, Site site)
    {
        var ordered = SignedArea(ring) < 0 ? ring.Reverse() : ring;
        var degrees = ordered.Select(p => Degrees(p, site)).ToList();
        return degrees.Append(degrees[0]);
    }

    /// <summary>A rectangle.</summary>
    public static Outline Rectangle(double eastM, double northM, double widthM, double heightM) =>
        new([[new(eastM, northM), new(eastM + widthM, northM), new(eastM + widthM, northM + heightM), new(eastM, northM + heightM)]]);

    /// <summary>Metres to degrees on the WGS 84 ellipsoid about the site.</summary>
    public static (double Longitude, double Latitude) Degrees(Point point, Site site)
    {
        const double SemiMajorM = 6378137, EccentricitySquared = 0.00669437999014;
        var latitude = site.LatitudeDegrees * Math.PI / 180;
        var w = Math.Sqrt(1 - (EccentricitySquared * Math.Sin(latitude) * Math.Sin(latitude)));
        var meridian = SemiMajorM * (1 - EccentricitySquared) / (w * w * w);
        var parallel = SemiMajorM / w * Math.Cos(latitude);
        return (
            Math.Round(site.LongitudeDegrees + (point.EastM / parallel * 180 / Math.PI), 6),
            Math.Round(site.LatitudeDegrees + (point.NorthM / meridian * 180 / Math.PI), 6));
    }

    private static double SignedArea(IReadOnlyList<Point> ring)
    {
        var twice = 0.0;
        for (var i = 0; i < ring.Count; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % ring.Count]);
            twice += (a.EastM * b.NorthM) - (b.EastM * a.NorthM);
        }

        return twice / 2;
    }
}
