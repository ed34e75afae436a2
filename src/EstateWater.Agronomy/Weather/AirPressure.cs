using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Pressure of the air, and the psychrometric constant that follows from it.</summary>
[Method("Air pressure and psychrometric constant", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 7–8", Check = "FAO-56 Example 2")]
public static class AirPressure
{
    /// <summary>Mean pressure at an elevation. [kPa]</summary>
    /// <param name="elevationM">Above sea level, −500 to 6000. [m]</param>
    /// <remarks>P = 101.3 [(293 − 0.0065 z) ∕ 293]^5.26. Allen et al. (1998) Eq. 7.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double AtElevationKpa(double elevationM)
    {
        Require.InRange(elevationM, -500, 6000, "m");
        return 101.3 * Math.Pow((293 - (0.0065 * elevationM)) / 293, 5.26);
    }

    /// <summary>γ: the psychrometric constant. [kPa/°C]</summary>
    /// <param name="pressureKpa">Air pressure, 30 to 110. [kPa]</param>
    /// <remarks>γ = 0.665×10⁻³ P. Allen et al. (1998) Eq. 8.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double PsychrometricKpaPerC(double pressureKpa) => 0.665e-3 * Require.InRange(pressureKpa, 30, 110, "kPa");
}
