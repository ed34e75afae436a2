using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>What kind of thing was observed.</summary>
internal enum ObservationKind
{
    Leaf,
    Stem,
    Predawn,
    Soil,
}

/// <summary>One observation with its place in a season.</summary>
internal sealed record Observation(ObservationKind Kind, int Day, bool IsLastSeason, double Value, double StandardError)
{
    /// <summary>Factor on the variance that is its own, ≥ 1: how much it is doubted.</summary>
    public double Doubt { get; init; } = 1;

    /// <summary>Those of a block's evidence that fall within its seasons, in time order within each kind.</summary>
    public static IReadOnlyList<Observation> Of(BlockEvidence evidence)
    {
        var observations = new List<Observation>();
        foreach (var t in evidence.Tensions)
        {
            Add(evidence, observations, KindOf(t.Measure), t.Date, t.TensionMpa, t.StandardErrorMpa);
        }

        foreach (var s in evidence.Soil)
        {
            Add(evidence, observations, ObservationKind.Soil, s.Date, s.WaterContentM3PerM3, 0);
        }

        return observations;
    }

    public static ObservationKind KindOf(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => ObservationKind.Leaf,
        WaterPotentialMeasure.Stem => ObservationKind.Stem,
        _ => ObservationKind.Predawn,
    };

    private static void Add(BlockEvidence evidence, List<Observation> observations, ObservationKind kind, DateOnly date, double value, double error)
    {
        if (Within(evidence.Season, date) is { } day)
        {
            observations.Add(new Observation(kind, day, IsLastSeason: false, value, error));
        }
        else if (evidence.LastSeason is { } last && Within(last, date) is { } lastDay)
        {
            observations.Add(new Observation(kind, lastDay, IsLastSeason: true, value, error));
        }
    }

    private static int? Within(SeasonForcing season, DateOnly date) =>
        season.IndexOf(date) is var day && day >= 0 && day < season.Days ? day : null;
}
