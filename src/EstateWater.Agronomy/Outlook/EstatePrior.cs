using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Outlook;

/// <summary>What a block is likely to be before its own readings count: a normal distribution that the estate's other blocks inform.</summary>
/// <param name="Mean">Of what blocks tell one another of, in standard units.</param>
/// <param name="Covariance">Of the same between blocks, in standard units.</param>
/// <param name="Wandering">How far water use wanders, in parts of the usual. A block's drift tells nothing of its neighbour's.</param>
internal sealed record EstatePrior(Vector<double> Mean, Matrix<double> Covariance, double Wandering)
{
    private const double Imaginary = 3;

    /// <summary>Before any block is known.</summary>
    public static EstatePrior Unread { get; } = new(
        Vector<double>.Build.Dense(Unknowns.Shared), Matrix<double>.Build.DenseIdentity(Unknowns.Shared), Wandering: 1);

    /// <summary>The same with blocks that differ and use that wanders by so many parts of it.</summary>
    public EstatePrior With(double apart, double wandering) => this with { Covariance = Covariance * (apart * apart), Wandering = Wandering * wandering };

    /// <summary>With what blocks that were fitted with this prior tell of how they differ.</summary>
    /// <remarks>
    /// A step of expectation-maximisation (Laird and Ware 1982, Biometrics 38:963–974, from memory, to be checked): the mean
    /// over blocks of what is unsure of each and of how far its mean lies from theirs. Unknowns that readings cannot tell
    /// apart stay tied to one another, which no spread for each alone could say. Three imaginary blocks that agree with
    /// this prior keep a small estate from certainty.
    /// </remarks>
    /// <param name="blocks">In any one order.</param>
    public EstatePrior Learn(IReadOnlyList<FittedBlock> blocks)
    {
        var read = blocks.Where(b => b.WasRead).Select(b => Matrix<double>.Build.DenseOfRowArrays(b.Unknowns[..Unknowns.Shared])).ToList();
        if (read.Count == 0)
        {
            return this;
        }

        var means = read.Select(u => u.RowSums() / u.ColumnCount).ToList();
        var middle = means.Aggregate((a, b) => a + b) / means.Count;
        var sum = Imaginary * Covariance;
        for (var i = 0; i < read.Count; i++)
        {
            var off = means[i] - middle;
            var anomalies = read[i] - means[i].OuterProduct(Vector<double>.Build.Dense(read[i].ColumnCount, 1));
            sum += (anomalies.TransposeAndMultiply(anomalies) / (read[i].ColumnCount - 1)) + off.OuterProduct(off);
        }

        return this with { Covariance = sum / (read.Count + Imaginary) };
    }
}
