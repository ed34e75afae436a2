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

    // What the model itself cannot follow, beside the leaves' own spread. [MPa], [m³/m³]
    private const double ModelErrorMpa = 0.010;
    private const double SoilErrorM3PerM3 = 0.012;

    // Vines and canopy change over the winter: last season's sets count for less.
    private const double LastSeasonVarianceFactor = 4;

    public static FittedBlock Fit(BlockEvidence evidence, EstatePrior prior, IReadOnlyList<double>? doubt = null)
    {
        var numbers = new NormalNumbers(evidence.Code);
        var unknowns = Draw(prior, numbers);
        var observations = Observation.Of(evidence);
        if (observations.Count == 0)
        {
            return new FittedBlock(evidence, unknowns, [], []);
        }

        var observed = observations.Select(o => o.Value).ToArray();
        var variance = observations.Select((o, k) => Variance(o) * (doubt?[k] ?? 1)).ToArray();
        var inflated = variance.Select(v => v * Steps).ToArray();
        for (var step = 0; step < Steps; step++)
        {
            EnsembleSmoother.Update(unknowns, Predict(evidence, unknowns, observations), observed, inflated, numbers);
        }

        return new FittedBlock(evidence, unknowns, observations, Predict(evidence, unknowns, observations));
    }

    /// <summary>How much an observation that the fit finds strange should count: 1 for none, more for doubtful.</summary>
    /// <remarks>A weight after Huber (1964) on the variance: beyond two standard deviations it grows with the square, so an outlier bends the fit and does not break it.</remarks>
    public static IReadOnlyList<double> Doubt(FittedBlock fitted) =>
        [.. fitted.Observations.Select((o, k) =>
        {
            var predicted = fitted.Predicted[k];
            var mean = predicted.Average();
            var variance = predicted.Sum(v => (v - mean) * (v - mean)) / (predicted.Length - 1);
            var strange = Math.Abs(o.Value - mean) / Math.Sqrt(variance + Variance(o));
            return Math.Max(1, strange * strange / 4);
        })];

    private static double Variance(Observation observation)
    {
        var variance = observation.Kind == ObservationKind.Soil
            ? SoilErrorM3PerM3 * SoilErrorM3PerM3
            : (observation.StandardError * observation.StandardError) + (ModelErrorMpa * ModelErrorMpa);
        return observation.IsLastSeason ? variance * LastSeasonVarianceFactor : variance;
    }

    private static double[][] Draw(EstatePrior prior, NormalNumbers numbers)
    {
        var unknowns = new double[Unknowns.Count][];
        for (var p = 0; p < unknowns.Length; p++)
        {
            unknowns[p] = new double[Members];
            for (var m = 0; m < Members; m++)
            {
                unknowns[p][m] = prior.Mean[p] + (prior.Spread[p] * numbers.Next());
            }
        }

        return unknowns;
    }

    private static double[][] Predict(BlockEvidence evidence, double[][] unknowns, IReadOnlyList<Observation> observations)
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
