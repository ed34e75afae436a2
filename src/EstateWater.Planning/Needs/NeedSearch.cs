using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Needs;

/// <summary>Finds the fewest quarter hours that keep a valve's blocks acceptably below their ceilings.</summary>
/// <remarks>
/// Water is added an hour at a time to the night where it spares most trouble, until another hour spares less than it
/// costs; then quarter hours are taken away while nothing is lost. What a night's soil cannot hold spares nothing, so no
/// set runs longer than its water stays within the roots.
/// </remarks>
internal sealed class NeedSearch(IReadOnlyList<Night> nights, int days)
{
    // What a millimetre must at least spare; it keeps water from being spent on trouble nobody would see. Ours.
    private const double CostPerMm = 0.01;

    private const int Step = 4;

    /// <summary>A shorter set is not worth the walk.</summary>
    public const int ShortestSetQuarters = 6;

    /// <summary>The need of a valve from its blocks' courses.</summary>
    public ValveNeed Find(ValveWater valve, IReadOnlyList<BlockCourse> courses)
    {
        var quarters = new int[nights.Count];
        if (courses.Any(c => c.FirstTrouble() is not null))
        {
            Add(courses, quarters, int.MaxValue, paid: true);
            TakeBack(courses, quarters);
        }

        return Need(valve, courses, quarters, byHand: false);
    }

    /// <summary>So many quarter hours, in the nights where they do most good.</summary>
    public ValveNeed Place(ValveWater valve, IReadOnlyList<BlockCourse> courses, int quartersByHand)
    {
        var quarters = new int[nights.Count];
        Add(courses, quarters, quartersByHand, paid: false);
        return Need(valve, courses, quarters, byHand: true);
    }

    private ValveNeed Need(ValveWater valve, IReadOnlyList<BlockCourse> courses, int[] quarters, bool byHand)
    {
        var total = quarters.Sum();
        var spared = Cost(courses, new int[nights.Count]) - Cost(courses, quarters);
        var trouble = courses.Select(c => c.FirstTrouble()).Where(d => d is not null).Min() ?? days;
        var lastGood = Math.Max(0, nights.Count(n => n.WaterDay < trouble) - 1);
        return new ValveNeed
        {
            Valve = valve,
            Courses = courses,
            QuartersByNight = quarters,
            LastGoodNight = quarters.Length == 0 ? 0 : Math.Max(lastGood, Array.FindLastIndex(quarters, q => q > 0)),
            WorthPerQuarter = total == 0 ? 0 : Math.Max(0, spared) / total,
            ByHand = byHand,
        };
    }

    private void Add(IReadOnlyList<BlockCourse> courses, int[] quarters, int most, bool paid)
    {
        var price = CostPerMm * Step / 4.0 * courses.Sum(c => Weight(c) * c.RateMmPerH);
        var cost = Cost(courses, quarters);
        while (quarters.Sum() < most && nights.Count > 0)
        {
            var (night, least) = BestNight(courses, quarters, Math.Min(Step, most - quarters.Sum()));
            if (night < 0 || (paid && cost - least < price))
            {
                return;
            }

            quarters[night] += Math.Min(Step, most - quarters.Sum());
            cost = least;
        }
    }

    private (int Night, double Cost) BestNight(IReadOnlyList<BlockCourse> courses, int[] quarters, int step)
    {
        var best = (Night: -1, Cost: double.PositiveInfinity);
        for (var night = 0; night < nights.Count; night++)
        {
            // A first hour must make room for the shortest set.
            var add = quarters[night] == 0 ? Math.Max(step, 0) : step;
            if (quarters[night] + add > nights[night].Quarters)
            {
                continue;
            }

            quarters[night] += add;

            // An open night is as good as a fresh one: fewer, longer sets.
            var cost = Cost(courses, quarters) - (quarters[night] > add ? 1e-6 : 0);
            quarters[night] -= add;
            if (cost < best.Cost - 1e-9)
            {
                best = (night, cost);
            }
        }

        return best;
    }

    private void TakeBack(IReadOnlyList<BlockCourse> courses, int[] quarters)
    {
        var price = CostPerMm / 4.0 * courses.Sum(c => Weight(c) * c.RateMmPerH);
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

    private double Cost(IReadOnlyList<BlockCourse> courses, int[] quarters)
    {
        var byDay = new int[days];
        for (var night = 0; night < quarters.Length; night++)
        {
            byDay[nights[night].WaterDay] += quarters[night];
        }

        return courses.Sum(c => Weight(c) * c.Cost(c.Watered(byDay)));
    }

    /// <summary>A block's say at its valve: its share of the area, and its priority.</summary>
    private static double Weight(BlockCourse course) =>
        course.State.Block.AreaM2 / course.State.Valve.Blocks.Sum(b => b.AreaM2) * (course.State.Block.Priority / 3.0);
}
