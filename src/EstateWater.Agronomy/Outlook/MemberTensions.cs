using System.Numerics;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Each member's way from soil and air to tension.</summary>
internal sealed class MemberTensions
{
    private const double LeastEmptied = 1e-9;

    private readonly double[] intercept;
    private readonly double[] vpdSlope;
    private readonly double[] climb;
    private readonly double[] bend;
    private readonly bool isByDay;

    public MemberTensions(double[][] unknowns, WaterPotentialMeasure measure)
    {
        isByDay = measure != WaterPotentialMeasure.Predawn;
        var members = unknowns[0].Length;
        var spread = Unknowns.Spread;
        intercept = new double[members];
        vpdSlope = new double[members];
        climb = new double[members];
        bend = new double[members];
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
        }
    }

    /// <summary>Tension of every member. [MPa]</summary>
    public void At(double vpdKpa, double lightShare, double[] rootShareLeft, double[] tensionMpa)
    {
        var (vpd, light) = (new Vector<double>(vpdKpa), new Vector<double>(lightShare));
        for (var m = 0; m <= tensionMpa.Length - Vector<double>.Count; m += Vector<double>.Count)
        {
            At(m, vpd, light, new Vector<double>(rootShareLeft, m)).CopyTo(tensionMpa, m);
        }
    }

    /// <summary>Tension of every member in its own air. [MPa]</summary>
    public void At(double[] vpdKpa, double[] lightShare, double[] rootShareLeft, double[] tensionMpa)
    {
        for (var m = 0; m <= tensionMpa.Length - Vector<double>.Count; m += Vector<double>.Count)
        {
            At(m, new Vector<double>(vpdKpa, m), new Vector<double>(lightShare, m), new Vector<double>(rootShareLeft, m)).CopyTo(tensionMpa, m);
        }
    }

    // A root zone that is full to the last bit may come out a bit over full: a power of less than nothing is none.
    private Vector<double> At(int member, Vector<double> vpdKpa, Vector<double> lightShare, Vector<double> rootShareLeft)
    {
        var emptied = Vector.Max(new Vector<double>(LeastEmptied), Vector<double>.One - rootShareLeft);
        var air = new Vector<double>(intercept, member) + (new Vector<double>(vpdSlope, member) * vpdKpa);
        return (isByDay ? air * lightShare : air)
            + (new Vector<double>(climb, member) * Vector.Exp(new Vector<double>(bend, member) * Vector.Log(emptied)));
    }
}
