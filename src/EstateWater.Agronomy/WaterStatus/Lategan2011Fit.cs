using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Midday tension of Shiraz in a warm climate from its tension before dawn.</summary>
/// <remarks>The fitted curves turn over near no tension: below 0.15 MPa they say nothing and are refused.</remarks>
[Method(
    "Midday from predawn water potential, Shiraz",
    Source = "Lategan (2011), in Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 171, Fig. 6.29: stem = −(1.60736 + 0.190138/Ψpd)², n 24, R² 0.971; leaf = −(1.55074 + 0.090622/Ψpd)², n 15, R² 0.947",
    Check = "The class limits of Table 6.4 on the same page at predawn tensions of 0.2, 0.4, 0.6 and 0.8 MPa")]
public static class Lategan2011Fit
{
    /// <summary>Wettest predawn tension for which the curves hold. [MPa, positive]</summary>
    public const double WettestPredawnMpa = 0.15;

    /// <summary>Driest predawn tension; the readings behind the curves end about there. [MPa, positive]</summary>
    public const double DriestPredawnMpa = 1.2;

    /// <summary>Midday stem tension. [MPa, positive]</summary>
    /// <param name="predawnTensionMpa">0.15–1.2. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public static double StemMpa(double predawnTensionMpa) => Square(1.60736 - (0.190138 / Guard(predawnTensionMpa)));

    /// <summary>Midday leaf tension. [MPa, positive]</summary>
    /// <param name="predawnTensionMpa">0.15–1.2. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public static double LeafMpa(double predawnTensionMpa) => Square(1.55074 - (0.090622 / Guard(predawnTensionMpa)));

    private static double Guard(double predawnTensionMpa) =>
        Require.InRange(predawnTensionMpa, WettestPredawnMpa, DriestPredawnMpa, "MPa of predawn tension");

    private static double Square(double root) => root * root;
}
