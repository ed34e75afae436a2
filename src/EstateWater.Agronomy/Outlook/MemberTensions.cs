using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Each member's way from soil and air to tension.</summary>
internal sealed class MemberTensions
{
    private readonly double[] intercept;
    private readonly double[] vpdSlope;
    private readonly double[] climb;
    private readonly double[] bend;
    private readonly double[] closing;

    public MemberTensions(double[][] unknowns, WaterPotentialMeasure measure)
    {
        var members = unknowns[0].Length;
        var spread = Unknowns.Spread;
        intercept = new double[members];
        vpdSlope = new double[members];
        climb = new double[members];
        bend = new double[members];
        closing = new double[members];
        var own = measure switch
        {
            WaterPotentialMeasure.Stem => Unknowns.StemOffset,
            WaterPotentialMeasure.Predawn => Unknowns.PredawnOffset,
            _ => -1,
        };
        for (var m = 0; m < members; m++)
        {
            intercept[m] = TensionBaseline.InterceptMpa(measure)
                + (spread[Unknowns.Offset] * unknowns[Unknowns.Offset][m])
                + (own < 0 ? 0 : spread[own] * unknowns[own][m]);
            vpdSlope[m] = TensionBaseline.VpdSlopeMpaPerKpa(measure) * Math.Exp(spread[Unknowns.VpdResponse] * unknowns[Unknowns.VpdResponse][m]);
            climb[m] = TensionBaseline.ClimbMpa * TensionBaseline.ClimbShare(measure) * Math.Exp(spread[Unknowns.Climb] * unknowns[Unknowns.Climb][m]);
            bend[m] = Math.Exp(spread[Unknowns.Bend] * unknowns[Unknowns.Bend][m]);
            closing[m] = Math.Clamp(spread[Unknowns.Closing] * unknowns[Unknowns.Closing][m], 0, 0.9);
        }
    }

    /// <summary>Tension of every member. [MPa]</summary>
    public void At(double vpdKpa, double[] rootShareLeft, double[] tensionMpa)
    {
        for (var m = 0; m < tensionMpa.Length; m++)
        {
            tensionMpa[m] = At(m, vpdKpa, 1 - rootShareLeft[m]);
        }
    }

    /// <summary>Tension of every member in its own air. [MPa]</summary>
    public void At(double[] vpdKpa, double[] rootShareLeft, double[] tensionMpa)
    {
        for (var m = 0; m < tensionMpa.Length; m++)
        {
            tensionMpa[m] = At(m, vpdKpa[m], 1 - rootShareLeft[m]);
        }
    }

    private double At(int member, double vpdKpa, double emptied) =>
        intercept[member] + (vpdSlope[member] * vpdKpa * (1 - (closing[member] * emptied))) + (climb[member] * Math.Pow(emptied, bend[member]));
}
