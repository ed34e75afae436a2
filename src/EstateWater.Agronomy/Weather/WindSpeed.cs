using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Wind brought to the height that evapotranspiration is computed for. [m/s]</summary>
[Method("Wind speed at 2 m", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 47 and chapter 3 (missing wind)", Check = "FAO-56 Examples 14 and 18")]
public static class WindSpeed
{
    /// <summary>Wind where none is measured. [m/s]</summary>
    public const double WhenMissingMPerS = 2;

    /// <summary>Least wind in evapotranspiration: air above grass is never quite still. [m/s]</summary>
    public const double LeastMPerS = 0.5;

    /// <summary>u₂. [m/s]</summary>
    /// <param name="windMPerS">Wind as measured, 0 to 75. [m/s]</param>
    /// <param name="heightM">Anemometer above grass, 0.5 to 100. [m]</param>
    /// <remarks>u₂ = u_z · 4.87 ∕ ln(67.8 z − 5.42). Allen et al. (1998) Eq. 47.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double At2MMPerS(double windMPerS, double heightM)
    {
        Require.InRange(windMPerS, 0, 75, "m/s");
        Require.InRange(heightM, 0.5, 100, "m");
        return windMPerS * 4.87 / Math.Log((67.8 * heightM) - 5.42);
    }
}
