using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Drip;

/// <summary>Flow of an emitter by pressure: q = k·h^x.</summary>
/// <param name="Coefficient">k. [(L/h) ∕ m^x]</param>
/// <param name="Exponent">x: about 0.5 turbulent, about 0 compensating. [–]</param>
[Method(
    "Emitter flow by pressure",
    Source = "ISO 9261 (2004), Emitters and emitting pipe: q = k·h^x (wording from memory, to be checked)",
    Check = "By hand: 2 L/h at 10 m with 0.5 is 1.788854 L/h at 8 m and 2.190890 L/h at 12 m")]
public sealed record EmitterCurve(double Coefficient, double Exponent)
{
    /// <summary>The curve through one point.</summary>
    /// <param name="flowLPerH">Above 0. [L/h]</param>
    /// <param name="headM">Above 0. [m of water]</param>
    /// <param name="exponent">−0.2 to 1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static EmitterCurve Through(double flowLPerH, double headM, double exponent) =>
        new(Require.Above(flowLPerH, 0, "L/h") / Math.Pow(Require.Above(headM, 0, "m"), Require.InRange(exponent, -0.2, 1, "(exponent)")), exponent);

    /// <summary>The curve through two points.</summary>
    /// <param name="first">Flow and head, above 0. [L/h, m of water]</param>
    /// <param name="second">Flow and another head, above 0. [L/h, m of water]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range, or both heads are the same.</exception>
    public static EmitterCurve Through((double FlowLPerH, double HeadM) first, (double FlowLPerH, double HeadM) second)
    {
        Require.Above(first.FlowLPerH, 0, "L/h");
        Require.Above(first.HeadM, 0, "m");
        Require.Above(second.FlowLPerH, 0, "L/h");
        Require.Above(second.HeadM, 0, "m");
        Require.Above(Math.Abs(second.HeadM - first.HeadM), 0, "m between the heads", nameof(second));
        var exponent = Math.Log(second.FlowLPerH / first.FlowLPerH) / Math.Log(second.HeadM / first.HeadM);
        return new EmitterCurve(first.FlowLPerH / Math.Pow(first.HeadM, exponent), exponent);
    }

    /// <summary>Flow at a head. [L/h]</summary>
    /// <param name="headM">Above 0. [m of water]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public double FlowLPerH(double headM) => Coefficient * Math.Pow(Require.Above(headM, 0, "m"), Exponent);
}
