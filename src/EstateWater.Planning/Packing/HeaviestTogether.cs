namespace EstateWater.Planning.Packing;

/// <summary>The valves that weigh most among those whose flows fit together: a knapsack, by branch and bound (Horowitz and Sahni 1974, Journal of the ACM 21:277–292).</summary>
internal sealed class HeaviestTogether
{
    // Beyond so many branches the bound from above is taken instead.
    private const int MostBranches = 20_000;

    private readonly long most;
    private readonly (int Valve, long Flow, double Weight)[] valves;
    private readonly bool[] taken;
    private bool[] best;
    private double bestWeight;
    private int branches;

    public HeaviestTogether(long[] flows, long most, double[] weights)
    {
        this.most = most;
        valves = [.. flows
            .Select((flow, v) => (Valve: v, Flow: flow, Weight: weights[v]))
            .Where(v => v.Weight > 0 && v.Flow <= most)
            .OrderByDescending(v => v.Weight / v.Flow).ThenBy(v => v.Valve)];
        taken = new bool[valves.Length];
        best = new bool[valves.Length];
    }

    /// <summary>The heaviest valves found, in ascending order, and a weight that none that fit together exceed.</summary>
    public (int[] Valves, double Weight) Find()
    {
        Branch(0, most, 0);
        var weight = branches > MostBranches ? Above(0, most) : bestWeight;
        return ([.. valves.Where((_, i) => best[i]).Select(v => v.Valve).Order()], weight);
    }

    private void Branch(int next, long left, double weight)
    {
        if (weight > bestWeight)
        {
            bestWeight = weight;
            best = [.. taken];
        }

        if (next == valves.Length || ++branches > MostBranches || weight + Above(next, left) <= bestWeight)
        {
            return;
        }

        if (valves[next].Flow <= left)
        {
            taken[next] = true;
            Branch(next + 1, left - valves[next].Flow, weight + valves[next].Weight);
            taken[next] = false;
        }

        Branch(next + 1, left, weight);
    }

    // With the last valve opened in part.
    private double Above(int next, long left)
    {
        var weight = 0.0;
        for (; next < valves.Length && valves[next].Flow <= left; next++)
        {
            left -= valves[next].Flow;
            weight += valves[next].Weight;
        }

        return next < valves.Length ? weight + (valves[next].Weight * left / valves[next].Flow) : weight;
    }
}
