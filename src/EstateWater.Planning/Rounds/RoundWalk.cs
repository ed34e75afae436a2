namespace EstateWater.Planning.Rounds;

/// <summary>Ways through a list of candidates, as their places in it: how long they take, and how to make them shorter.</summary>
internal sealed class RoundWalk
{
    private const double Tiny = 1e-9;

    private readonly double[] there;
    private readonly double[,] between;

    /// <param name="candidates">In the order of their places.</param>
    /// <param name="metresPerMinute">In the straight line, above 0. [m/min]</param>
    public RoundWalk(IReadOnlyList<RoundCandidate> candidates, double metresPerMinute)
    {
        there = [.. candidates.Select(c => c.MinutesThere)];
        between = new double[there.Length, there.Length];
        for (var i = 0; i < there.Length; i++)
        {
            for (var j = 0; j < there.Length; j++)
            {
                var (east, north) = (candidates[i].EastM - candidates[j].EastM, candidates[i].NorthM - candidates[j].NorthM);
                between[i, j] = Math.Sqrt((east * east) + (north * north)) / metresPerMinute;
            }
        }
    }

    /// <summary>Reading and walking, first to last. [min]</summary>
    public double Minutes(List<int> path)
    {
        var sum = 0.0;
        for (var i = 0; i < path.Count; i++)
        {
            sum += there[path[i]] + (i > 0 ? between[path[i - 1], path[i]] : 0);
        }

        return sum;
    }

    /// <summary>Where a stop lengthens a path least, and by how much, its reading included. [min]</summary>
    public (int Place, double Added) Cheapest(List<int> path, int stop)
    {
        var (place, least) = (0, path.Count == 0 ? 0 : between[stop, path[0]]);
        for (var i = 1; i <= path.Count; i++)
        {
            var added = between[path[i - 1], stop] + (i < path.Count ? between[stop, path[i]] - between[path[i - 1], path[i]] : 0);
            if (added < least - Tiny)
            {
                (place, least) = (i, added);
            }
        }

        return (place, least + there[stop]);
    }

    /// <summary>The path with a stop where it lengthens it least, and then made shorter.</summary>
    public List<int> With(List<int> path, int stop)
    {
        List<int> longer = [.. path];
        longer.Insert(Cheapest(path, stop).Place, stop);
        return Shorter(longer);
    }

    // 2-opt on an open path: any stretch, the ends too, may be walked the other way round; then any stop may move.
    private List<int> Shorter(List<int> path)
    {
        for (var improved = true; improved;)
        {
            improved = Turned(path) || Moved(path);
        }

        return path;
    }

    private bool Turned(List<int> path)
    {
        for (var from = 0; from < path.Count - 1; from++)
        {
            for (var to = from + 1; to < path.Count; to++)
            {
                var gain = (from > 0 ? between[path[from - 1], path[from]] - between[path[from - 1], path[to]] : 0)
                    + (to < path.Count - 1 ? between[path[to], path[to + 1]] - between[path[from], path[to + 1]] : 0);
                if (gain > Tiny)
                {
                    path.Reverse(from, to - from + 1);
                    return true;
                }
            }
        }

        return false;
    }

    private bool Moved(List<int> path)
    {
        var now = Minutes(path);
        for (var i = 0; i < path.Count && path.Count > 2; i++)
        {
            var stop = path[i];
            path.RemoveAt(i);
            var (place, added) = Cheapest(path, stop);
            if (Minutes(path) + added < now - Tiny)
            {
                path.Insert(place, stop);
                return true;
            }

            path.Insert(i, stop);
        }

        return false;
    }
}
