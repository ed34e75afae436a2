using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Statistics;

/// <summary>What a reading is worth to a decision before it is taken.</summary>
[Method(
    "Expected value of sample information",
    Source = "Raiffa & Schlaifer (1961), Applied Statistical Decision Theory, chapters 4 and 5: the expected cost of the best choice now, less that of the best choice after the reading",
    Check = "The normal two-action problem against σ*·(φ(z) − z·(1 − Φ(z))) with Φ and the loss integrated numerically; bounds of perfect and of no information")]
public static class SampleInformation
{
    private const int MostSteps = 400;

    /// <summary>Expected fall in the cost of a decision when a quantity is read first. [unit of the costs, 0 or more]</summary>
    /// <param name="quantity">The quantity in equally likely versions of what may be, at least one.</param>
    /// <param name="costs">By choice, then version: what the choice costs if that version is true. At least one choice.</param>
    /// <param name="readingError">Standard deviation of the reading about the quantity, above 0. [unit of the quantity]</param>
    /// <exception cref="ArgumentOutOfRangeException">A list is empty or of another length, or a value is outside its range.</exception>
    /// <remarks>
    /// <para>EVSI = minₐ E[C(a)] − E_y[minₐ E[C(a) | y]], the reading y normal about the quantity and taken in steps of half its error, as on a gauge.</para>
    /// <para>Every version's chances of the steps add up to 1, so that the answer is never negative and never more than perfect knowledge would spare.</para>
    /// </remarks>
    public static double Expected(IReadOnlyList<double> quantity, IReadOnlyList<IReadOnlyList<double>> costs, double readingError)
    {
        Require.Values(quantity, 1);
        Require.AtLeast(costs?.Count ?? 0, 1, "choices", nameof(costs));
        Require.Above(readingError, 0, "(unit of the quantity)");
        foreach (var choice in costs!)
        {
            Require.Values(choice, 1, nameof(costs));
            Require.InRange(choice.Count, quantity.Count, quantity.Count, "costs, one a version", nameof(costs));
        }

        var steps = Steps(quantity, readingError);
        var byStep = steps.Select(_ => new double[costs.Count]).ToArray();
        var chances = new double[steps.Length];
        for (var version = 0; version < quantity.Count; version++)
        {
            var sum = 0.0;
            for (var step = 0; step < steps.Length; step++)
            {
                var z = (steps[step] - quantity[version]) / readingError;
                sum += chances[step] = Math.Exp(-0.5 * z * z);
            }

            for (var step = 0; step < steps.Length; step++)
            {
                var chance = chances[step] / sum / quantity.Count;
                for (var choice = 0; choice < costs.Count; choice++)
                {
                    byStep[step][choice] += chance * costs[choice][version];
                }
            }
        }

        return Math.Max(0, costs.Min(c => c.Average()) - byStep.Sum(step => step.Min()));
    }

    private static double[] Steps(IReadOnlyList<double> quantity, double error)
    {
        var (low, high) = (quantity.Min() - (4 * error), quantity.Max() + (4 * error));
        var count = (int)Math.Clamp(Math.Ceiling((high - low) / (error / 2)), 2, MostSteps);
        return [.. Enumerable.Range(0, count + 1).Select(i => low + ((high - low) * i / count))];
    }
}
