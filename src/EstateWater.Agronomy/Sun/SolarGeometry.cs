namespace EstateWater.Agronomy.Sun;

/// <summary>Where the sun stands against the stars at an instant.</summary>
/// <param name="DeclinationRad">δ. [rad]</param>
/// <param name="EquationOfTimeMin">Apparent minus mean solar time. [min]</param>
internal readonly record struct SolarGeometry(double DeclinationRad, double EquationOfTimeMin)
{
    private static readonly DateTimeOffset J2000 = new(2000, 1, 1, 12, 0, 0, TimeSpan.Zero);

    /// <summary>By the low-accuracy series of Meeus, Astronomical Algorithms, as NOAA's solar calculator uses them.</summary>
    public static SolarGeometry At(DateTimeOffset instant)
    {
        var t = (instant - J2000).TotalDays / 36525;
        var meanLongitude = Radians(280.46646 + (t * (36000.76983 + (0.0003032 * t))));
        var anomaly = Radians(357.52911 + (t * (35999.05029 - (0.0001537 * t))));
        var eccentricity = 0.016708634 - (t * (0.000042037 + (0.0000001267 * t)));
        var centre = Radians(
            (Math.Sin(anomaly) * (1.914602 - (t * (0.004817 + (0.000014 * t)))))
            + (Math.Sin(2 * anomaly) * (0.019993 - (0.000101 * t)))
            + (Math.Sin(3 * anomaly) * 0.000289));
        var node = Radians(125.04 - (1934.136 * t));
        var longitude = meanLongitude + centre - Radians(0.00569 + (0.00478 * Math.Sin(node)));
        var obliquity = Radians(
            23 + (26 / 60.0) + ((21.448 - (t * (46.815 + (t * (0.00059 - (0.001813 * t)))))) / 3600) + (0.00256 * Math.Cos(node)));
        return new SolarGeometry(
            Math.Asin(Math.Sin(obliquity) * Math.Sin(longitude)),
            EquationOfTime(meanLongitude, anomaly, eccentricity, obliquity));
    }

    private static double EquationOfTime(double meanLongitude, double anomaly, double e, double obliquity)
    {
        var y = Math.Pow(Math.Tan(obliquity / 2), 2);
        var radians = (y * Math.Sin(2 * meanLongitude))
            - (2 * e * Math.Sin(anomaly))
            + (4 * e * y * Math.Sin(anomaly) * Math.Cos(2 * meanLongitude))
            - (y * y / 2 * Math.Sin(4 * meanLongitude))
            - (1.25 * e * e * Math.Sin(2 * anomaly));
        return 4 * double.RadiansToDegrees(radians);
    }

    private static double Radians(double degrees) => double.DegreesToRadians(degrees);
}
