using Google.OrTools.LinearSolver;

namespace EstateWater.Planning.Packing;

/// <summary>Which valves of a source can be open at once, and what that takes from a night beyond its flow times its hours.</summary>
/// <remarks>
/// <para>
/// Valves open wholly or not at all, so a pump is rarely used to its last litre. Let a weight stand on each valve so that
/// no valves whose flows fit together weigh more than 1: then quarter hours times weights never exceed the quarter hours
/// of a night. The weights that a division of the night breaks most are the dual prices of its fractional covering by
/// sets of valves (Gilmore and Gomory 1961, Operations Research 9:849–859).
/// </para>
/// <para>Rows are made as needed: the worst set of valves under the present weights is a knapsack, solved exactly or from above.</para>
/// </remarks>
internal sealed class OpenTogether(long[] flows, long most)
{
    // A valve that is not wanted tonight still gets what weight is free.
    private const double Unwanted = 0.001;

    private const double Close = 1e-6;
    private const int MostRows = 400;

    private readonly List<int[]> together = [];

    /// <summary>Weights by valve: over any valves that fit together they sum to at most 1, and over these quarter hours to as much as can be.</summary>
    public double[] Weights(IReadOnlyList<int> quarters)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var weights = flows.Select((flow, v) => solver.MakeNumVar(0, flow <= most ? 1 : 0, $"weight {v}")).ToArray();
        var objective = solver.Objective();
        objective.SetMaximization();
        for (var v = 0; v < flows.Length; v++)
        {
            objective.SetCoefficient(weights[v], Math.Max(Unwanted, quarters[v]));
        }

        together.ForEach(set => Limit(solver, weights, set));
        while (true)
        {
            if (solver.Solve() != Solver.ResultStatus.OPTIMAL)
            {
                throw new InvalidOperationException("No weights of valves that open together, although weights of zero always do.");
            }

            var found = weights.Select(w => Math.Max(0, w.SolutionValue())).ToArray();
            var (heaviest, weight) = new HeaviestTogether(flows, most, found).Find();
            if (weight <= 1 + Close || together.Count >= MostRows || together.Exists(known => known.SequenceEqual(heaviest)))
            {
                return [.. found.Select(w => w / Math.Max(1, weight))];
            }

            together.Add(heaviest);
            Limit(solver, weights, heaviest);
        }
    }

    private static void Limit(Solver solver, Variable[] weights, int[] set)
    {
        var row = solver.MakeConstraint(double.NegativeInfinity, 1);
        foreach (var v in set)
        {
            row.SetCoefficient(weights[v], 1);
        }
    }
}
