using EstateWater.Agronomy.Outlook;
using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Needs;

/// <summary>Finds the fewest quarter hours that keep a valve's blocks acceptably below their ceilings.</summary>
/// <remarks>
/// Water is added an hour at a time to the night where it spares most trouble, until another hour spares less than it
/// costs; then quarter hours are taken away while nothing is lost. What a night's soil cannot hold spares nothing, so no
/// set runs longer than its water stays within the roots.
/// </remarks>
/// <param name="nights">Of the valve's source.</param>
/// <param name="days">Today and the horizon.</param>
/// <param name="seasonPerMm">What a millimetre is worth later in the season (<see cref="WaterPrice"/>); 0 when water is not short.</param>
internal sealed class NeedSearch(IReadOnlyList<Night> nights, int days, double seasonPerMm = 0)
{
    private const int Step = ValveNeed.PieceQuarters;

    // Hours set by hand come before all others: the manager has decided.
    private const double WorthByHand = 1000;

    private readonly Dictionary<BlockCourse, OutlookTrials> trials = [];

    /// <summary>A shorter set is not worth the walk.</summary>
    public const int ShortestSetQuarters = 6;

    /// <summary>The need of a valve from its blocks' courses.</summary>
    public ValveNeed Find(ValveWater valve, IReadOnlyList<BlockCourse> courses)
    {
        var quarters = new int[nights.Count];
        if (!courses.Any(c => c.FirstTrouble() is not null))
        {
            return Need(valve, courses, quarters, [], byHand: false);
        }

        var wanted = Add(courses, quarters, int.MaxValue, paid: true, NightLengths);
        var affordable = LeaveUnaffordable(courses, quarters, wanted);
        TakeBack(courses, quarters);
        JoinShortSets(quarters);
        return Need(valve, courses, quarters, [.. wanted.Take(affordable).Select(p => p.Spared)], byHand: false) with
        {
            ForgoneQuarters = wanted.Skip(affordable).Sum(p => p.Quarters),
        };
    }

    /// <summary>So many quarter hours, in the nights where they do most good.</summary>
    public ValveNeed Place(ValveWater valve, IReadOnlyList<BlockCourse> courses, int quartersByHand)
    {
        var quarters = new int[nights.Count];
        var spared = Add(courses, quarters, quartersByHand, paid: false, NightLengths).Sum(p => p.Spared);
        return Need(valve, courses, quarters, [], byHand: true) with { WantedQuarters = quartersByHand, SparedByHand = spared };
    }

    /// <summary>Quarter hours by night that are decided.</summary>
    public ValveNeed Keep(ValveWater valve, IReadOnlyList<BlockCourse> courses, int[] quartersByNight) =>
        Need(valve, courses, quartersByNight, [], byHand: true);

    /// <summary>Shortens what was packed where other nights than the wanted ones left some of it idle.</summary>
    /// <param name="courses">The valve's blocks.</param>
    /// <param name="quarters">Packed quarter hours by night; shortened in place.</param>
    public void Shorten(IReadOnlyList<BlockCourse> courses, int[] quarters)
    {
        var packed = quarters.ToArray();
        TakeBack(courses, quarters);
        for (var night = 0; night < quarters.Length; night++)
        {
            if (quarters[night] > 0)
            {
                quarters[night] = Math.Min(packed[night], Math.Max(quarters[night], ShortestSetQuarters));
            }
        }
    }

    /// <summary>Quarter hours beside those by night that would be worth their water, were there room.</summary>
    public int StillWanted(IReadOnlyList<BlockCourse> courses, int[] quarters) =>
        WorthTheirPrice(courses, Add(courses, [.. quarters], int.MaxValue, paid: true, NightLengths)) * Step;

    /// <summary>Quarter hours by night with more of them where there is room and more spare what they cost; hours by hand are added whatever they spare.</summary>
    /// <param name="need">Whose.</param>
    /// <param name="quarters">By night.</param>
    /// <param name="most">That each night may have.</param>
    /// <param name="wanted">At most so many more. [quarter hours]</param>
    /// <remarks>A further night must hold a set of <see cref="ShortestSetQuarters"/> and spare more than one quarter hour does: opening a valve is work.</remarks>
    public int[] WithMore(ValveNeed need, int[] quarters, int[] most, int wanted)
    {
        var caps = most.ToArray();
        while (true)
        {
            var more = quarters.ToArray();
            var added = Add(need.Courses, more, quarters.Sum() + wanted, paid: !need.ByHand, caps);
            if (!need.ByHand)
            {
                LeaveUnaffordable(need.Courses, more, added);
            }

            if (FirstIdle(need, quarters, more) is not { } idle)
            {
                return more;
            }

            caps[idle] = 0;
        }
    }

    // The first night opened for too little.
    private int? FirstIdle(ValveNeed need, int[] before, int[] quarters)
    {
        var cost = CostWithWater(need.Courses, quarters);
        for (var night = 0; night < quarters.Length; night++)
        {
            if (before[night] > 0 || quarters[night] == 0)
            {
                continue;
            }

            var without = quarters.ToArray();
            without[night] = 0;
            if (quarters[night] < ShortestSetQuarters || (!need.ByHand && CostWithWater(need.Courses, without) - cost <= need.SparedPerQuarter))
            {
                return night;
            }
        }

        return null;
    }

    /// <summary>What the blocks' days cost with quarter hours by night, and their water.</summary>
    public double CostWithWater(IReadOnlyList<BlockCourse> courses, int[] quarters) => Cost(courses, quarters) + (quarters.Sum() / 4.0 * WaterPerHour(courses));

    /// <summary>What an hour of the valve must spare.</summary>
    public double WaterPerHour(IReadOnlyList<BlockCourse> courses) => PerHour(courses, seasonPerMm);

    // How many of the pieces, first to last, are together worth most above the season's price. A first hour may spare
    // little and the fifth a lot, so the first that is not worth its price does not end it.
    private int WorthTheirPrice(IReadOnlyList<BlockCourse> courses, IReadOnlyList<Piece> pieces)
    {
        if (seasonPerMm <= 0)
        {
            return pieces.Count;
        }

        var perQuarter = PerHour(courses, seasonPerMm) / 4;
        var (best, most, sum) = (0, 0.0, 0.0);
        for (var p = 0; p < pieces.Count; p++)
        {
            sum += pieces[p].Spared - (pieces[p].Quarters * perQuarter);
            (best, most) = sum >= most ? (p + 1, sum) : (best, most);
        }

        return best;
    }

    // Takes back, in place, the pieces beyond those worth the season's price; how many these are.
    private int LeaveUnaffordable(IReadOnlyList<BlockCourse> courses, int[] quarters, IReadOnlyList<Piece> added)
    {
        var affordable = WorthTheirPrice(courses, added);
        foreach (var left in added.Skip(affordable))
        {
            quarters[left.Night] -= left.Quarters;
        }

        return affordable;
    }

    private ValveNeed Need(ValveWater valve, IReadOnlyList<BlockCourse> courses, int[] quarters, List<double> spared, bool byHand)
    {
        var pieces = (quarters.Sum() + ValveNeed.PieceQuarters - 1) / ValveNeed.PieceQuarters;

        // Joining short sets may have added to what was searched; such hours are worth what the last one was.
        return new ValveNeed
        {
            Valve = valve,
            Courses = courses,
            QuartersByNight = quarters,
            NightShare = NightShares(courses, quarters),
            WorthByPiece = byHand ? [.. Enumerable.Repeat(WorthByHand, pieces)] : Coarse(Falling([.. spared.Concat(Enumerable.Repeat(spared.LastOrDefault(), pieces)).Take(pieces)])),
            ByHand = byHand,
        };
    }

    // The nights chosen are the best there are together; another night is worth what all its water spares there alone.
    private double[] NightShares(IReadOnlyList<BlockCourse> courses, int[] quarters)
    {
        var wanted = quarters.Sum();
        if (wanted == 0)
        {
            return [.. nights.Select(_ => 1.0)];
        }

        var dry = Cost(courses, new int[nights.Count]);
        var spared = nights.Select((night, n) =>
        {
            var only = new int[nights.Count];
            only[n] = Math.Min(wanted, night.Quarters);
            return Math.Max(0, dry - Cost(courses, only));
        }).ToArray();
        var most = spared.DefaultIfEmpty(0).Max();
        return [.. spared.Select((s, n) => quarters[n] > 0 || most <= 0 ? 1 : s / most)];
    }

    private int[] NightLengths => [.. nights.Select(n => n.Quarters)];

    private List<Piece> Add(IReadOnlyList<BlockCourse> courses, int[] quarters, int most, bool paid, int[] mostByNight)
    {
        var added = new List<Piece>();
        var price = Step / 4.0 * PerHour(courses, 0);
        var cost = Cost(courses, quarters);
        var spared = Unseen();
        while (quarters.Sum() < most && nights.Count > 0)
        {
            var step = Math.Min(Step, most - quarters.Sum());
            var (night, least, sawAll) = BestNight(courses, quarters, step, mostByNight, cost, spared);
            if (night < 0 || (paid && cost - least < price))
            {
                if (sawAll)
                {
                    break;
                }

                spared = Unseen(); // What was last seen may have grown since.
                continue;
            }

            quarters[night] += step;
            added.Add(new Piece(night, step, Math.Max(0, cost - least)));
            cost = least;
        }

        return added;
    }

    private double[] Unseen() => [.. nights.Select(_ => double.PositiveInfinity)];

    /// <summary>The night in which a step spares most. Those that spared less when last seen are not looked at again: with more water everywhere they seldom spare more (accelerated greedy, Minoux 1978).</summary>
    /// <param name="courses">The valve's blocks.</param>
    /// <param name="quarters">By night.</param>
    /// <param name="step">[quarter hours]</param>
    /// <param name="most">That each night may have. [quarter hours]</param>
    /// <param name="cost">Of <paramref name="quarters"/>.</param>
    /// <param name="spared">By night, what a step spared when last seen; brought up to date in place.</param>
    private (int Night, double Cost, bool SawAll) BestNight(IReadOnlyList<BlockCourse> courses, int[] quarters, int step, int[] most, double cost, double[] spared)
    {
        var best = (Night: -1, Cost: double.PositiveInfinity);
        foreach (var night in Enumerable.Range(0, nights.Count).Where(n => quarters[n] + step <= most[n]).OrderByDescending(n => spared[n]).ToList())
        {
            if (cost - spared[night] >= best.Cost - 1e-9)
            {
                return (best.Night, best.Cost, SawAll: false);
            }

            quarters[night] += step;

            // An open night is as good as a fresh one: fewer, longer sets.
            var with = Cost(courses, quarters) - (quarters[night] > step ? 1e-6 : 0);
            quarters[night] -= step;
            spared[night] = cost - with;
            if (with < best.Cost - 1e-9)
            {
                best = (night, with);
            }
        }

        return (best.Night, best.Cost, SawAll: true);
    }

    private void TakeBack(IReadOnlyList<BlockCourse> courses, int[] quarters)
    {
        var price = PerHour(courses, 0) / 4;
        for (var night = nights.Count - 1; night >= 0; night--)
        {
            var cost = Cost(courses, quarters);
            while (quarters[night] > 0)
            {
                quarters[night]--;
                var less = Cost(courses, quarters);
                if (less - cost > price)
                {
                    quarters[night]++;
                    break;
                }

                cost = less;
            }
        }
    }

    // A remnant too short for a set goes to the nearest night that has one and room for it, else it becomes a short set.
    private void JoinShortSets(int[] quarters)
    {
        for (var night = 0; night < quarters.Length; night++)
        {
            if (quarters[night] is 0 or >= ShortestSetQuarters)
            {
                continue;
            }

            var remnant = quarters[night];
            var others = Enumerable.Range(0, quarters.Length)
                .Where(n => n != night && quarters[n] > 0 && quarters[n] + remnant <= nights[n].Quarters)
                .OrderBy(n => Math.Abs(n - night)).ThenBy(n => n)
                .ToList();
            if (others.Count > 0)
            {
                quarters[others[0]] += remnant;
                quarters[night] = 0;
            }
            else
            {
                quarters[night] = Math.Min(ShortestSetQuarters, nights[night].Quarters);
            }
        }
    }

    private double Cost(IReadOnlyList<BlockCourse> courses, int[] quarters)
    {
        var byDay = new int[days];
        for (var night = 0; night < quarters.Length; night++)
        {
            byDay[nights[night].WaterDay] += quarters[night];
        }

        return courses.Sum(c => WaterPrice.Weight(c.State.Block) * c.Cost(Watered(c, byDay), seasonPerMm > 0 ? c.WeightsWhenShort : null));
    }

    private double[][] Watered(BlockCourse course, int[] quartersByDay)
    {
        if (!trials.TryGetValue(course, out var mine))
        {
            trials[course] = mine = course.Trials();
        }

        return mine.Tensions(course.AppliedMm(quartersByDay));
    }

    /// <summary>Pools neighbours until no later piece is worth more than an earlier one (pool adjacent violators, Ayer et al. 1955).</summary>
    private static double[] Falling(double[] worth)
    {
        var pools = new List<(double Sum, int Count)>();
        foreach (var piece in worth)
        {
            var pool = (Sum: piece, Count: 1);
            while (pools.Count > 0 && pools[^1].Sum / pools[^1].Count < pool.Sum / pool.Count)
            {
                pool = (pool.Sum + pools[^1].Sum, pool.Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }

            pools.Add(pool);
        }

        return [.. pools.SelectMany(p => Enumerable.Repeat(p.Sum / p.Count, p.Count))];
    }

    // A few steps are enough to tell first hours from last ones, and keep the packing small.
    private static double[] Coarse(double[] worth)
    {
        const int steps = 6;
        var length = Math.Max(1, (worth.Length + steps - 1) / steps);
        return [.. worth.Chunk(length).SelectMany(chunk => Enumerable.Repeat(chunk.Average(), chunk.Length))];
    }

    private static double PerHour(IReadOnlyList<BlockCourse> courses, double perMm) => WaterPrice.PerHour(courses.Select(c => (c.State.Block, c.RateMmPerH)), perMm);

    /// <summary>Quarter hours put on a night, and the trouble they spared beside those before them.</summary>
    private readonly record struct Piece(int Night, int Quarters, double Spared);
}
