using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A block's reading sets of this season beside what was expected of them before they counted.</summary>
/// <param name="Observations">Reading sets only.</param>
/// <param name="Doubt">By observation.</param>
/// <param name="Surprise">Read less expected. [MPa]</param>
/// <param name="Expected">Covariance of the expectations. [MPa²]</param>
internal sealed record Innovation(IReadOnlyList<Observation> Observations, IReadOnlyList<double> Doubt, Vector<double> Surprise, Matrix<double> Expected)
{
    public static Innovation Of(IReadOnlyList<Observation> observations, IReadOnlyList<double> doubt, double[][] predicted)
    {
        var mine = Enumerable.Range(0, observations.Count).Where(k => observations[k] is { Kind: not ObservationKind.Soil, IsLastSeason: false }).ToList();
        var surprise = Vector<double>.Build.Dense(mine.Count, k => observations[mine[k]].Value - predicted[mine[k]].Average());
        if (mine.Count == 0)
        {
            return new Innovation([], [], Vector<double>.Build.Dense(1), Matrix<double>.Build.Dense(1, 1));
        }

        return new Innovation(
            [.. mine.Select(k => observations[k])],
            [.. mine.Select(k => doubt[k])],
            surprise,
            EnsembleSmoother.Covariance([.. mine.Select(k => predicted[k])]));
    }

    /// <summary>Logarithm of the likelihood of the surprise, without its constant.</summary>
    public double LogLikelihood(Discrepancy discrepancy)
    {
        if (Observations.Count == 0)
        {
            return 0;
        }

        var factor = (Expected + discrepancy.Covariance(Observations, Doubt)).Cholesky();
        return -0.5 * (Surprise.DotProduct(factor.Solve(Surprise)) + factor.DeterminantLn);
    }
}
