namespace EstateWater.Planning.Rounds;

/// <summary>Chooses the blocks of a round and their order: most worth within the time there is.</summary>
/// <remarks>
/// The orienteering problem (Golden, Levy and Vohra 1987, Naval Research Logistics 34:307–318; from memory, to be checked)
/// without a fixed start. Solved by insertion from every likely first block, 2-opt, and giving chosen blocks up for others;
/// tests hold it against all orders of small estates. The same candidates give the same round.
/// </remarks>
public sealed class RoundPlanner
{
    private const double Tiny = 1e-9;

    // A round holds a dozen blocks: those worth least never come into it, and the rest is searched in the blink of an eye.
    private const int MostCandidates = 60;
    private const int MostStarts = 16;
    private const int MostExchanged = 4;

    // How much the time that a block takes counts against its worth: fully, half, or not at all.
    private static readonly double[] TimeCounts = [1, 0.5, 0];

    private readonly IReadOnlyList<RoundCandidate> candidates;
    private readonly double minutes;
    private readonly HashSet<int> always;
    private readonly RoundWalk walk;

    private RoundPlanner(IReadOnlyList<RoundCandidate> candidates, double minutes, double metresPerMinute, IReadOnlySet<string>? always)
    {
        this.candidates = candidates;
        this.minutes = minutes;
        this.always = [.. Enumerable.Range(0, candidates.Count).Where(i => always?.Contains(candidates[i].Block) == true)];
        walk = new RoundWalk(candidates, metresPerMinute);
    }

    /// <summary>The round.</summary>
    /// <param name="candidates">Each block once.</param>
    /// <param name="minutes">Time for reading and walking. [min]</param>
    /// <param name="metresPerMinute">Walking speed in the straight line, above 0. [m/min]</param>
    /// <param name="always">Blocks that are read whether they fit or not.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above 0.</exception>
    public static RoundPath Plan(IReadOnlyList<RoundCandidate> candidates, double minutes, double metresPerMinute, IReadOnlySet<string>? always = null)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(metresPerMinute);
        var ordered = candidates.OrderByDescending(c => c.Worth).ThenBy(c => c.Block, StringComparer.Ordinal).ToList();
        var likely = ordered.Where((c, i) => i < MostCandidates || always?.Contains(c.Block) == true).ToList();
        return new RoundPlanner(likely, minutes, metresPerMinute, always).Best();
    }

    private RoundPath Best()
    {
        List<int> best = [];
        foreach (var stop in always.Order())
        {
            best = walk.With(best, stop);
        }

        var starts = best.Count > 0 ? [best] : Enumerable.Range(0, candidates.Count).Where(i => candidates[i].MinutesThere <= minutes && candidates[i].Worth > 0).Take(MostStarts).Select(i => new List<int> { i });
        var filled = starts.SelectMany(start => TimeCounts.Select(counts => Filled(start, counts, []))).OrderByDescending(WorthOf).ToList();
        foreach (var path in filled.Take(MostExchanged).Select(Exchanged))
        {
            best = IsBetter(path, best) ? path : best;
        }

        return new RoundPath([.. best.Select(i => candidates[i])], walk.Minutes(best));
    }

    // Inserts what is worth most for its time until nothing fits.
    private List<int> Filled(List<int> path, double timeCounts, HashSet<int> without)
    {
        var left = minutes - walk.Minutes(path);
        while (true)
        {
            var (next, most) = (-1, 0.0);
            for (var i = 0; i < candidates.Count; i++)
            {
                if (candidates[i].Worth <= 0 || without.Contains(i) || path.Contains(i))
                {
                    continue;
                }

                var added = walk.Cheapest(path, i).Added;
                var worth = candidates[i].Worth / Math.Pow(Math.Max(Tiny, added), timeCounts);
                if (added <= left + Tiny && worth > most + Tiny)
                {
                    (next, most) = (i, worth);
                }
            }

            if (next < 0)
            {
                return path;
            }

            path = walk.With(path, next);
            left = minutes - walk.Minutes(path);
        }
    }

    // Gives one or two chosen blocks up for others while that is worth more, or takes less time for the same.
    private List<int> Exchanged(List<int> path)
    {
        while (Neighbours(path).FirstOrDefault(other => IsBetter(other, path)) is { } better)
        {
            path = better;
        }

        return path;
    }

    private IEnumerable<List<int>> Neighbours(List<int> path)
    {
        var free = path.Where(i => !always.Contains(i)).ToList();
        foreach (var gone in free)
        {
            List<int> without = [.. path.Where(i => i != gone)];
            yield return Filled(without, 1, [gone]);
            for (var other = 0; other < candidates.Count; other++)
            {
                if (candidates[other].Worth > 0 && !path.Contains(other) && walk.With(without, other) is var exchanged && walk.Minutes(exchanged) <= minutes + Tiny)
                {
                    yield return Filled(exchanged, 1, []);
                }
            }
        }

        foreach (var (first, i) in free.Select((first, i) => (first, i)))
        {
            foreach (var second in free.Skip(i + 1))
            {
                List<int> without = [.. path.Where(stop => stop != first && stop != second)];
                yield return Filled(without, 1, [first, second]);
                yield return Filled(without, 0, [first, second]);
            }
        }
    }

    private bool IsBetter(List<int> one, List<int> other)
    {
        var (worth, otherWorth) = (WorthOf(one), WorthOf(other));
        return worth > otherWorth + Tiny || (worth > otherWorth - Tiny && one.Count > 0 && walk.Minutes(one) < walk.Minutes(other) - Tiny);
    }

    private double WorthOf(List<int> path) => path.Sum(i => candidates[i].Worth);
}
