namespace EstateWater.Planning.Rounds;

/// <summary>Chooses the blocks of a round and their order: most worth within the time there is.</summary>
/// <remarks>
/// The orienteering problem (Golden, Levy and Vohra 1987, Naval Research Logistics 34:307–318; from memory, to be checked)
/// without a fixed start. Solved by insertion from every likely first block, 2-opt and the exchange of chosen for not chosen
/// blocks; tests hold it against all orders of small estates. The same candidates give the same round.
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
    private readonly double metresPerMinute;
    private readonly IReadOnlySet<string> always;

    private RoundPlanner(IReadOnlyList<RoundCandidate> candidates, double minutes, double metresPerMinute, IReadOnlySet<string> always)
    {
        this.candidates = candidates;
        this.minutes = minutes;
        this.metresPerMinute = metresPerMinute;
        this.always = always;
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
        return new RoundPlanner(likely, minutes, metresPerMinute, always ?? new HashSet<string>()).Best();
    }

    private RoundPath Best()
    {
        var must = new List<RoundCandidate>();
        foreach (var stop in candidates.Where(c => always.Contains(c.Block)))
        {
            must = Shorter(Inserted(must, stop));
        }

        var starts = must.Count > 0 ? [must] : candidates.Where(c => c.MinutesThere <= minutes && c.Worth > 0).Take(MostStarts).Select(c => new List<RoundCandidate> { c }).ToList();
        var filled = starts.SelectMany(start => TimeCounts.Select(counts => Filled(start, counts))).ToList();
        var best = must;
        foreach (var path in filled.OrderByDescending(p => p.Sum(s => s.Worth)).Take(MostExchanged).Select(Exchanged))
        {
            best = IsBetter(path, best) ? path : best;
        }

        return new RoundPath(best, MinutesOf(best));
    }

    // Inserts what is worth most for its time until nothing fits.
    private List<RoundCandidate> Filled(List<RoundCandidate> path, double timeCounts)
    {
        while (true)
        {
            var now = MinutesOf(path);
            List<RoundCandidate>? next = null;
            var most = 0.0;
            foreach (var candidate in candidates.Where(c => c.Worth > 0 && !path.Contains(c)))
            {
                var longer = Inserted(path, candidate);
                var added = Math.Max(Tiny, MinutesOf(longer) - now);
                if (candidate.Worth / Math.Pow(added, timeCounts) > most + Tiny && Fits(longer = Shorter(longer)))
                {
                    (next, most) = (longer, candidate.Worth / Math.Pow(added, timeCounts));
                }
            }

            if (next is null)
            {
                return path;
            }

            path = next;
        }
    }

    // Gives one or two chosen blocks up for others while that is worth more, and fills what room is left.
    private List<RoundCandidate> Exchanged(List<RoundCandidate> path)
    {
        for (var improved = true; improved;)
        {
            improved = false;
            foreach (var without in Thinned(path))
            {
                foreach (var other in candidates.Where(c => c.Worth > 0 && !path.Contains(c)))
                {
                    var exchanged = Shorter(Inserted(without, other));
                    if (!Fits(exchanged))
                    {
                        continue;
                    }

                    exchanged = Filled(exchanged, 1);
                    if (IsBetter(exchanged, path))
                    {
                        (path, improved) = (exchanged, true);
                        break;
                    }
                }

                if (improved)
                {
                    break;
                }
            }
        }

        return path;
    }

    private IEnumerable<List<RoundCandidate>> Thinned(List<RoundCandidate> path)
    {
        var free = path.Where(s => !always.Contains(s.Block)).ToList();
        return free.Select(gone => path.Where(s => s != gone).ToList())
            .Concat(free.SelectMany((first, i) => free.Skip(i + 1).Select(second => path.Where(s => s != first && s != second).ToList())));
    }

    private List<RoundCandidate> Inserted(List<RoundCandidate> path, RoundCandidate stop)
    {
        var (place, least) = (path.Count, double.PositiveInfinity);
        for (var i = 0; i <= path.Count; i++)
        {
            var (from, to) = (i > 0 ? path[i - 1] : null, i < path.Count ? path[i] : null);
            var added = Walk(from, stop) + Walk(stop, to) - Walk(from, to);
            if (added < least - Tiny)
            {
                (place, least) = (i, added);
            }
        }

        return [.. path.Take(place), stop, .. path.Skip(place)];
    }

    // 2-opt on an open path: any stretch, the ends too, may be walked the other way round; then any stop may move.
    private List<RoundCandidate> Shorter(List<RoundCandidate> path)
    {
        for (var improved = true; improved;)
        {
            improved = false;
            var now = MinutesOf(path);
            foreach (var other in Turned(path).Concat(Moved(path)))
            {
                if (MinutesOf(other) < now - Tiny)
                {
                    (path, improved) = (other, true);
                    break;
                }
            }
        }

        return path;
    }

    private static IEnumerable<List<RoundCandidate>> Turned(List<RoundCandidate> path)
    {
        for (var from = 0; from < path.Count - 1; from++)
        {
            for (var to = from + 1; to < path.Count; to++)
            {
                var turned = path.ToList();
                turned.Reverse(from, to - from + 1);
                yield return turned;
            }
        }
    }

    private IEnumerable<List<RoundCandidate>> Moved(List<RoundCandidate> path) =>
        path.Count < 3 ? [] : path.Select(stop => Inserted([.. path.Where(s => s != stop)], stop));

    private bool IsBetter(List<RoundCandidate> one, List<RoundCandidate> other)
    {
        var (worth, otherWorth) = (one.Sum(s => s.Worth), other.Sum(s => s.Worth));
        return worth > otherWorth + Tiny || (worth > otherWorth - Tiny && one.Count > 0 && MinutesOf(one) < MinutesOf(other) - Tiny);
    }

    private bool Fits(List<RoundCandidate> path) => MinutesOf(path) <= minutes + Tiny;

    private double MinutesOf(List<RoundCandidate> path)
    {
        var sum = 0.0;
        for (var i = 0; i < path.Count; i++)
        {
            sum += path[i].MinutesThere + (i > 0 ? Walk(path[i - 1], path[i]) : 0);
        }

        return sum;
    }

    private double Walk(RoundCandidate? from, RoundCandidate? to) =>
        from is null || to is null ? 0 : Math.Sqrt(Math.Pow(from.EastM - to.EastM, 2) + Math.Pow(from.NorthM - to.NorthM, 2)) / metresPerMinute;
}
