namespace EstateWater.Agronomy.Outlook;

/// <summary>A block after learning: an ensemble of what it may be.</summary>
public sealed class FittedBlock
{
    internal FittedBlock(
        BlockEvidence evidence, Discrepancy discrepancy, double[][] unknowns, IReadOnlyList<Observation> observations, double[][] predicted)
    {
        Evidence = evidence;
        Discrepancy = discrepancy;
        Unknowns = unknowns;
        Observations = observations;
        Predicted = predicted;
    }

    /// <summary>The same, its observations weighed otherwise.</summary>
    internal FittedBlock With(IReadOnlyList<Observation> observations) => new(Evidence, Discrepancy, Unknowns, observations, Predicted);

    /// <summary>What it was fitted to.</summary>
    public BlockEvidence Evidence { get; }

    /// <summary>Whether any reading set counted.</summary>
    public bool WasRead => Observations.Any(o => o.Kind != ObservationKind.Soil);

    internal Discrepancy Discrepancy { get; }

    internal double[][] Unknowns { get; }

    internal IReadOnlyList<Observation> Observations { get; }

    internal double[][] Predicted { get; }
}
