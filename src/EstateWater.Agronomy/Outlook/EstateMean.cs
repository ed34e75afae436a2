using EstateWater.Agronomy.Methods;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Where an estate's blocks lie together, from all their readings at once.</summary>
/// <remarks>
/// One block's few sets hardly tell how steeply its tension climbs, and its own fit stays near the prior; the mean of such
/// fits does too. All blocks' sets together tell it weeks earlier. Generalised least squares: each block's surprises, their
/// slopes in the unknowns by linear regression over its members, and a covariance that holds how far blocks differ. What all
/// estates have in common is the prior about it. Slopes are taken anew where a step led (Gauss and Newton).
/// </remarks>
[Method(
    "What an estate's blocks have in common",
    Source = "Laird & Ware (1982), Biometrics 38:963–974 (from memory, to be checked): mean of a model with random effects by generalised least squares",
    Check = "Mean of unequal groups, weighted by hand (Searle, Casella & McCulloch 1992, Variance Components, from memory)")]
internal static class EstateMean
{
    // Standard deviation of one estate's mean about that of all estates, in standard units. Ours.
    private const double BetweenEstates = 0.7;

    // It settles within so many. Farther out than this the slopes mean little.
    private const int Steps = 3;
    private const double Farthest = 2;

    /// <summary>A block's observations, linear in what blocks tell one another of.</summary>
    /// <param name="Slopes">By unknown, then observation.</param>
    /// <param name="Surprise">Read less expected at the estate's mean.</param>
    /// <param name="Covariance">Of the surprises, between blocks and from set to set.</param>
    internal readonly record struct Part(Matrix<double> Slopes, Vector<double> Surprise, Matrix<double> Covariance);

    /// <summary>Learns it from blocks as they were expected to be.</summary>
    /// <param name="blocks">Those that were read, in any one order, their observations weighed.</param>
    /// <param name="prior">How they differ; the search starts from its mean.</param>
    /// <param name="usual">Mean over all estates.</param>
    /// <param name="discrepancy">What no model follows.</param>
    /// <param name="options">How many blocks at once, and until when.</param>
    public static Vector<double> Learn(
        IReadOnlyList<FittedBlock> blocks, EstatePrior prior, Vector<double> usual, Discrepancy discrepancy, ParallelOptions options)
    {
        var mean = prior.Mean;
        var parts = new Part[blocks.Count];
        for (var step = 0; step < Steps && blocks.Count > 0; step++)
        {
            var here = prior with { Mean = mean };
            Parallel.For(0, blocks.Count, options, i => parts[i] = At(here, blocks[i], discrepancy));
            mean = Solve(parts, mean, usual, BetweenEstates).PointwiseMinimum(Farthest).PointwiseMaximum(-Farthest);
        }

        return mean;
    }

    /// <summary>The likeliest mean.</summary>
    /// <param name="parts">Of each block, at <paramref name="here"/>.</param>
    /// <param name="here">Where slopes and surprises were taken.</param>
    /// <param name="usual">Mean over all estates.</param>
    /// <param name="spread">Standard deviation of an estate's mean about it, &gt; 0.</param>
    public static Vector<double> Solve(IReadOnlyList<Part> parts, Vector<double> here, Vector<double> usual, double spread)
    {
        var precision = Matrix<double>.Build.DenseDiagonal(here.Count, 1 / (spread * spread));
        var pull = Vector<double>.Build.Dense(here.Count);
        foreach (var (slopes, surprise, covariance) in parts)
        {
            var weighted = covariance.Cholesky().Solve(slopes.Transpose());
            precision += slopes * weighted;
            pull += weighted.TransposeThisAndMultiply(surprise + slopes.TransposeThisAndMultiply(here - usual));
        }

        return usual + precision.Cholesky().Solve(pull);
    }

    private static Part At(EstatePrior prior, FittedBlock block, Discrepancy discrepancy)
    {
        var unknowns = BlockFit.Draw(prior, new NormalNumbers(block.Evidence.Code));
        var predicted = BlockFit.Predict(block.Evidence, unknowns, block.Observations);

        // With a last column of ones: what is expected at the mean, which a few hundred members miss by a little.
        var members = Matrix<double>.Build.Dense(BlockFit.Members, Unknowns.Count + 1, (m, p) =>
            p == Unknowns.Count ? 1 : unknowns[p][m] - (p < Unknowns.Shared ? prior.Mean[p] : 0));
        var said = Matrix<double>.Build.DenseOfColumnArrays(predicted);
        var slopes = members.TransposeThisAndMultiply(members).Cholesky().Solve(members.TransposeThisAndMultiply(said));
        var surprise = Vector<double>.Build.Dense(predicted.Length, k => block.Observations[k].Value) - slopes.Row(Unknowns.Count);
        return new Part(
            slopes.SubMatrix(0, Unknowns.Shared, 0, predicted.Length),
            surprise,
            EnsembleSmoother.Covariance(predicted) + discrepancy.Covariance(block.Observations));
    }
}
