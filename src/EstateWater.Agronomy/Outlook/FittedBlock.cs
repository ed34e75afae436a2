namespace EstateWater.Agronomy.Outlook;

/// <summary>A block after learning: an ensemble of what it may be.</summary>
public sealed class FittedBlock
{
    internal FittedBlock(BlockEvidence evidence, double[][] unknowns, IReadOnlyList<Observation> observations, double[][] predicted)
    {
        Evidence = evidence;
        Unknowns = unknowns;
        Observations = observations;
        Predicted = predicted;
    }

    /// <summary>What it was fitted to.</summary>
    public BlockEvidence Evidence { get; }

    /// <summary>Whether any reading set counted.</summary>
    public bool WasRead => Observations.Any(o => o.Kind != ObservationKind.Soil);

    internal double[][] Unknowns { get; }

    internal IReadOnlyList<Observation> Observations { get; }

    internal double[][] Predicted { get; }

    /// <summary>Observed less expected at the last reading set of the season, with its day; null when there is none. [MPa]</summary>
    internal (int Day, double Mpa)? LastResidual
    {
        get
        {
            for (var k = Observations.Count - 1; k >= 0; k--)
            {
                if (Observations[k] is { Kind: not ObservationKind.Soil, IsLastSeason: false } last)
                {
                    return (last.Day, last.Value - Predicted[k].Average());
                }
            }

            return null;
        }
    }
}
