using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Runs an ensemble through a season and reads off what each observation should have been.</summary>
internal static class SeasonRun
{
    public static void Predict(
        SeasonForcing season,
        RootZoneEnsemble rootZone,
        BlockEvidence evidence,
        double[][] unknowns,
        IReadOnlyList<Observation> observations,
        bool isLastSeason,
        double[][] predicted)
    {
        var mine = Enumerable.Range(0, observations.Count).Where(k => observations[k].IsLastSeason == isLastSeason).ToList();
        if (mine.Count == 0)
        {
            return;
        }

        var lastDay = mine.Max(k => observations[k].Day);
        var byDay = mine.ToLookup(k => observations[k].Day);
        var tensions = new Dictionary<ObservationKind, MemberTensions>();
        for (var day = 0; day <= lastDay; day++)
        {
            if (byDay.Contains(day))
            {
                rootZone.Look();
                foreach (var k in byDay[day])
                {
                    predicted[k] = Predict(observations[k], season.VpdKpa[day], season.LightShare[day], rootZone, evidence.Declared, unknowns, tensions);
                }
            }

            rootZone.Step(season, day);
        }
    }

    private static double[] Predict(
        Observation observation,
        double vpdKpa,
        double lightShare,
        RootZoneEnsemble rootZone,
        BlockDeclaration declared,
        double[][] unknowns,
        Dictionary<ObservationKind, MemberTensions> tensions)
    {
        var values = new double[rootZone.Members];
        if (observation.Kind == ObservationKind.Soil)
        {
            TubeContents(rootZone, declared, unknowns, values);
            return values;
        }

        if (!tensions.TryGetValue(observation.Kind, out var way))
        {
            tensions[observation.Kind] = way = new MemberTensions(unknowns, MeasureOf(observation.Kind));
        }

        way.At(vpdKpa, lightShare, rootZone.RootShareLeft, values);
        return values;
    }

    // A tube stands somewhere between the wetted soil and the rest; where is one of the unknowns.
    private static void TubeContents(RootZoneEnsemble rootZone, BlockDeclaration declared, double[][] unknowns, double[] contents)
    {
        const double typicalDryContent = 0.12;
        var spread = Unknowns.Spread;
        for (var m = 0; m < contents.Length; m++)
        {
            var wetPart = 1 / (1 + Math.Exp(-spread[Unknowns.TubePlace] * unknowns[Unknowns.TubePlace][m]));
            var held = declared.AvailableWaterM3PerM3 * Math.Exp(0.7 * spread[Unknowns.AvailableWater] * unknowns[Unknowns.AvailableWater][m]);
            contents[m] = typicalDryContent + (spread[Unknowns.TubeDryContent] * unknowns[Unknowns.TubeDryContent][m])
                + (held * ((wetPart * rootZone.WetShareLeft[m]) + ((1 - wetPart) * rootZone.DryShareLeft[m])));
        }
    }

    private static WaterPotentialMeasure MeasureOf(ObservationKind kind) => kind switch
    {
        ObservationKind.Leaf => WaterPotentialMeasure.Leaf,
        ObservationKind.Stem => WaterPotentialMeasure.Stem,
        _ => WaterPotentialMeasure.Predawn,
    };
}
