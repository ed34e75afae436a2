using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A block's reading sets of this season beside what the estate's prior expects of them before they count.</summary>
/// <param name="Observations">Reading sets only.</param>
/// <param name="Surprise">Read less expected. [MPa]</param>
/// <param name="Still">Covariance of the expectations were water use not to wander. [MPa²]</param>
/// <param name="Wandering">What its wandering adds to that covariance. [MPa²]</param>
internal sealed record Innovation(
    IReadOnlyList<Observation> Observations, Vector<double> Surprise, Matrix<double> Still, Matrix<double> Wandering)
{
    /// <summary>Of a block that has reading sets this season; null where it has none.</summary>
    /// <param name="block">Its observations weighed.</param>
    /// <param name="prior">Of the estate.</param>
    public static Innovation? Of(FittedBlock block, EstatePrior prior)
    {
        var observations = block.Observations.Where(o => o is { Kind: not ObservationKind.Soil, IsLastSeason: false }).ToList();
        if (observations.Count == 0)
        {
            return null;
        }

        var unknowns = BlockFit.Draw(prior, new NormalNumbers(block.Evidence.Code));
        var wandering = BlockFit.Predict(block.Evidence, unknowns, observations);
        for (var knot = Unknowns.Shared; knot < Unknowns.Count; knot++)
        {
            Array.Clear(unknowns[knot]);
        }

        var still = BlockFit.Predict(block.Evidence, unknowns, observations);
        return new Innovation(
            observations,
            Vector<double>.Build.Dense(observations.Count, k => observations[k].Value - wandering[k].Average()),
            EnsembleSmoother.Covariance(still),
            EnsembleSmoother.Covariance([.. wandering.Select((w, k) => w.Zip(still[k], (a, b) => a - b).ToArray())]));
    }

    /// <summary>Logarithm of the likelihood of the surprise, without its constant.</summary>
    /// <param name="discrepancy">What the model does not follow.</param>
    /// <param name="wandering">How far water use wanders, in parts of the usual.</param>
    /// <param name="apart">How far blocks differ, in parts of what the prior says.</param>
    public double LogLikelihood(Discrepancy discrepancy, double wandering, double apart)
    {
        var factor = ((Still * (apart * apart)) + (Wandering * (wandering * wandering)) + discrepancy.Covariance(Observations)).Cholesky();
        return -0.5 * (Surprise.DotProduct(factor.Solve(Surprise)) + factor.DeterminantLn);
    }
}
