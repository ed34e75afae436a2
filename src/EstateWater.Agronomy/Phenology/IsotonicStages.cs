namespace EstateWater.Agronomy.Phenology;

/// <summary>Makes observed stages rise with the date, changing them as little as least squares allows.</summary>
internal static class IsotonicStages
{
    /// <summary>One stage a date, in date order, none below an earlier one.</summary>
    /// <remarks>Pool adjacent violators: Ayer et al. (1955), Ann. Math. Stat. 26: 641–647.</remarks>
    public static IReadOnlyList<(DateOnly Date, double ElStage)> Of(IEnumerable<(DateOnly Date, double ElStage)> observed)
    {
        var pools = new List<(List<DateOnly> Dates, double Sum, int Count)>();
        foreach (var sameDay in observed.GroupBy(o => o.Date).OrderBy(g => g.Key))
        {
            var pool = (Dates: new List<DateOnly> { sameDay.Key }, Sum: sameDay.Sum(o => o.ElStage), Count: sameDay.Count());
            while (pools.Count > 0 && pools[^1].Sum / pools[^1].Count > pool.Sum / pool.Count)
            {
                var before = pools[^1];
                pools.RemoveAt(pools.Count - 1);
                pool = ([.. before.Dates, .. pool.Dates], before.Sum + pool.Sum, before.Count + pool.Count);
            }

            pools.Add(pool);
        }

        return [.. pools.SelectMany(p => p.Dates.Select(date => (date, p.Sum / p.Count)))];
    }
}
