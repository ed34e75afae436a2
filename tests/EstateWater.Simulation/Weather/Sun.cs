namespace EstateWater.Simulation.Weather;

/// <summary>Position of the sun to the accuracy a weather generator needs (Spencer 1971 series).</summary>
public static class Sun
{
    /// <summary>Sun time minus clock time of a mean sun. [min]</summary>
    public static double EquationOfTimeMinutes(DateOnly date)
    {
        var b = DayAngle(date);
        return 229.18 * (0.000075 + (0.001868 * Math.Cos(b)) - (0.032077 * Math.Sin(b))
            - (0.014615 * Math.Cos(2 * b)) - (0.040849 * Math.Sin(2 * b)));
    }

    /// <summary>Declination. [rad]</summary>
    public static double Declination(DateOnly date)
    {
        var b = DayAngle(date);
        return 0.006918 - (0.399912 * Math.Cos(b)) + (0.070257 * Math.Sin(b))
            - (0.006758 * Math.Cos(2 * b)) + (0.000907 * Math.Sin(2 * b));
    }

    /// <summary>Hours between sunrise and sunset. [h]</summary>
    public static double DayLengthHours(DateOnly date, double latitudeDegrees) => 24 / Math.PI * SunsetAngle(date, latitudeDegrees);

    /// <summary>Radiation above the atmosphere on a level surface. [MJ/m²/day]</summary>
    public static double ExtraterrestrialMj(DateOnly date, double latitudeDegrees)
    {
        var latitude = latitudeDegrees * Math.PI / 180;
        var declination = Declination(date);
        var sunset = SunsetAngle(date, latitudeDegrees);
        var distance = 1 + (0.033 * Math.Cos(DayAngle(date)));
        return 24 * 60 / Math.PI * 0.0820 * distance
            * ((sunset * Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Sin(sunset)));
    }

    private static double SunsetAngle(DateOnly date, double latitudeDegrees) =>
        Math.Acos(Math.Clamp(-Math.Tan(latitudeDegrees * Math.PI / 180) * Math.Tan(Declination(date)), -1, 1));

    private static double DayAngle(DateOnly date) => 2 * Math.PI * (date.DayOfYear - 1) / 365;
}
