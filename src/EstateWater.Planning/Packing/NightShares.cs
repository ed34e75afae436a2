namespace EstateWater.Planning.Packing;

/// <summary>Quarter hours by need and night, before anything is laid on a clock.</summary>
/// <param name="Sets">All starting when their night opens: starts come later.</param>
/// <param name="Bound">No packing can be worth more.</param>
internal sealed record NightShares(IReadOnlyList<PlacedSet> Sets, long Bound)
{
    private const long One = 10_000;

    // A division as good as this is not searched on. The first ones serve only to find what cannot be opened together.
    private const double Gap = 0.003;
    private const double FirstWork = 0.02;
    private const double LastWork = 0.15;
    private const int MostRounds = 12;

    // A night that is over by less is left to the clock. [quarter hours]
    private const double Over = 0.1;

    /// <summary>Divides the nights with CP-SAT, again and again: where a night's valves cannot share it so, the next division is told why.</summary>
    /// <param name="source">What is wanted.</param>
    public static IEnumerable<NightShares> Divide(SourceNights source)
    {
        var model = new DivisionModel(source, [.. Enumerable.Range(0, source.Nights.Count)], []);
        var together = new OpenTogether(source.Flows, source.MostFlow);
        var bound = long.MaxValue;
        NightShares Tightened((IReadOnlyList<PlacedSet> Sets, double Bound, bool) found) =>
            new(found.Sets, bound = Math.Min(bound, (long)Math.Floor(found.Bound + 1e-6)));

        // What the valves want of the nights tells most of what cannot be opened together before any division is made.
        Limit(model, source, together, [.. source.Needs.SelectMany(need => need.QuartersByNight.Select((quarters, night) => new PlacedSet(need, night, 0, quarters)))]);
        var work = FirstWork;
        for (var round = 0; round < MostRounds; round++)
        {
            var found = model.Solve(Gap, work);
            if (found is { } some)
            {
                yield return Tightened(some);
            }

            if (found is not null && Limit(model, source, together, found.Value.Sets))
            {
                work = FirstWork;
            }
            else if (found is { Proven: true })
            {
                yield break;
            }
            else if (work < LastWork)
            {
                work = LastWork;
            }
            else if (found is null)
            {
                throw new InvalidOperationException($"Packing source {source.Source.Code} found no division; giving no water at all should always be possible.");
            }
            else
            {
                yield break;
            }
        }
    }

    private static bool Limit(DivisionModel model, SourceNights source, OpenTogether together, IReadOnlyList<PlacedSet> sets)
    {
        var limited = false;
        for (var night = 0; night < source.Nights.Count; night++)
        {
            var quarters = source.Needs.Select(need => sets.Where(s => s.Need == need && s.Night == night).Sum(s => s.Quarters)).ToArray();
            if (quarters.All(q => q == 0))
            {
                continue;
            }

            // Rounded down, they still weigh at most 1 together.
            var weights = together.Weights(quarters).Select(w => (long)Math.Floor(w * One)).ToArray();
            if (weights.Zip(quarters, (w, q) => w * q).Sum() > One * (source.Nights[night].Quarters + Over))
            {
                model.Limit(weights, One);
                limited = true;
            }
        }

        return limited;
    }
}
