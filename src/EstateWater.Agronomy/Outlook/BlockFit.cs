using System.Numerics.Tensors;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Learns a block's unknowns from its reading sets and soil profiles.</summary>
/// <remarks>
/// Ensemble smoother with multiple data assimilation in four steps (Emerick and Reynolds 2013). It needs no derivative,
/// takes many readings without collapsing on one member, and keeps what the readings do not tell as spread.
/// </remarks>
internal static class BlockFit
{
    /// <summary>Members of an ensemble; a multiple of every vector width.</summary>
    public const int Members = 256;

    private const int Steps = 4;

    /// <summary>Fits one block.</summary>
    /// <param name="evidence">Of the block.</param>
    /// <param name="knowledge">Of its estate.</param>
    /// <param name="weighed">Its observations as <see cref="Weighed"/> left them; null for as they are.</param>
    public static FittedBlock Fit(BlockEvidence evidence, EstateKnowledge knowledge, IReadOnlyList<Observation>? weighed = null)
    {
        var numbers = new NormalNumbers(evidence.Code);
        var unknowns = Draw(knowledge.Prior, numbers);
        var observations = weighed ?? Observation.Of(evidence);
        if (observations.Count == 0)
        {
            return new FittedBlock(evidence, knowledge.Discrepancy, unknowns, [], []);
        }

        var observed = observations.Select(o => o.Value).ToArray();
        var inflated = knowledge.Discrepancy.Covariance(observations) * Steps;
        var predicted = Predict(evidence, unknowns, observations);
        for (var step = 0; step < Steps; step++)
        {
            EnsembleSmoother.Update(unknowns, predicted, observed, inflated, numbers);
            predicted = Predict(evidence, unknowns, observations);
        }

        return new FittedBlock(evidence, knowledge.Discrepancy, unknowns, observations, predicted);
    }

    /// <summary>The block with how much its fit doubts each observation.</summary>
    /// <remarks>A weight after Huber (1964) on the variance: beyond two standard deviations it grows with the square, so an outlier bends the fit and does not break it.</remarks>
    public static FittedBlock Weighed(FittedBlock fitted)
    {
        var discrepancy = fitted.Discrepancy.Covariance(fitted.Observations);
        return fitted.With([.. fitted.Observations.Select((o, k) =>
        {
            var predicted = fitted.Predicted[k];
            var mean = predicted.Average();
            var variance = predicted.Sum(v => (v - mean) * (v - mean)) / (predicted.Length - 1);
            var strange = Math.Abs(o.Value - mean) / Math.Sqrt(variance + discrepancy[k, k]);
            return o with { Doubt = Math.Max(1, strange * strange / 4) };
        })]);
    }

    /// <summary>Members as they are before a block's own readings count.</summary>
    public static double[][] Draw(EstatePrior prior, NormalNumbers numbers)
    {
        var unknowns = new double[Unknowns.Count][];
        for (var p = 0; p < unknowns.Length; p++)
        {
            unknowns[p] = [.. Enumerable.Range(0, Members).Select(_ => numbers.Next())];
        }

        foreach (var drift in unknowns[Unknowns.Shared..])
        {
            TensorPrimitives.Multiply(drift, prior.Wandering, drift);
        }

        // From the last on: each needs the numbers of those before it as they were drawn.
        var factor = prior.Covariance.Cholesky().Factor;
        for (var p = Unknowns.Shared - 1; p >= 0; p--)
        {
            TensorPrimitives.Multiply(unknowns[p], factor[p, p], unknowns[p]);
            TensorPrimitives.Add(unknowns[p], prior.Mean[p], unknowns[p]);
            for (var q = 0; q < p; q++)
            {
                TensorPrimitives.MultiplyAdd(unknowns[q], factor[p, q], unknowns[p], unknowns[p]);
            }
        }

        return unknowns;
    }

    /// <summary>What each member says of each observation.</summary>
    public static double[][] Predict(BlockEvidence evidence, double[][] unknowns, IReadOnlyList<Observation> observations)
    {
        var predicted = new double[observations.Count][];
        if (evidence.LastSeason is { } last)
        {
            SeasonRun.Predict(last, new RootZoneEnsemble(evidence.Declared, unknowns, Unknowns.StartOfLastSeason), evidence, unknowns, observations, isLastSeason: true, predicted);
        }

        SeasonRun.Predict(evidence.Season, new RootZoneEnsemble(evidence.Declared, unknowns, Unknowns.StartOfSeason), evidence, unknowns, observations, isLastSeason: false, predicted);
        return predicted;
    }
}
