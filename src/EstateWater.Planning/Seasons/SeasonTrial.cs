namespace EstateWater.Planning.Seasons;

/// <summary>Lives the rest of a source's season at one price in every version of the weather; when the water is used up, it is.</summary>
internal sealed class SeasonTrial
{
    private readonly IReadOnlyList<IReadOnlyList<BlockSeason>> valves;
    private readonly int decidedDays;
    private readonly Dictionary<int, double> byPriority = [];
    private double totalM3;
    private double ripeningM3;
    private double trouble;

    private SeasonTrial(IReadOnlyList<IReadOnlyList<BlockSeason>> valves, int decidedDays)
    {
        this.valves = valves;
        this.decidedDays = decidedDays;
    }

    /// <summary>What is expected of a price.</summary>
    /// <param name="valves">Blocks by valve.</param>
    /// <param name="decidedDays">Days that a plan decides.</param>
    /// <param name="pricePerMm">See <see cref="SeasonUse"/>.</param>
    /// <param name="leftM3">Water there is; infinite where that is not asked. [m³]</param>
    /// <param name="cancellation">Stops the work.</param>
    public static SeasonUse At(IReadOnlyList<IReadOnlyList<BlockSeason>> valves, int decidedDays, double pricePerMm, double leftM3, CancellationToken cancellation)
    {
        var trials = new SeasonTrial[SeasonWeather.Versions];
        Parallel.For(0, trials.Length, new ParallelOptions { CancellationToken = cancellation }, version =>
        {
            trials[version] = new SeasonTrial(valves, decidedDays);
            trials[version].Live(version, pricePerMm, leftM3);
        });
        return new SeasonUse(
            pricePerMm,
            trials.Average(t => t.totalM3),
            trials.Average(t => t.ripeningM3),
            trials.Average(t => t.trouble),
            trials.SelectMany(t => t.byPriority).GroupBy(p => p.Key).ToDictionary(p => p.Key, p => p.Sum(m3 => m3.Value) / trials.Length));
    }

    private void Live(int version, double pricePerMm, double leftM3)
    {
        var seasons = valves.Select(blocks => new ValveSeason(blocks, version, pricePerMm)).ToArray();
        var days = valves.SelectMany(v => v).Select(b => b.Days).DefaultIfEmpty(0).Max();
        for (var first = 0; first < days; first += ValveSeason.WeekDays)
        {
            var hours = seasons.Select(s => leftM3 - totalM3 > 1e-6 ? s.WantedHours(first) : 0).ToArray();
            var wanted = hours.Zip(seasons, (h, s) => h * s.FlowM3PerH).Sum();

            // The week in which it ends is shared out in proportion.
            var share = wanted > 0 ? Math.Clamp((leftM3 - totalM3) / wanted, 0, 1) : 0;
            for (var v = 0; v < seasons.Length; v++)
            {
                trouble += seasons[v].Live(first, share * hours[v]);
                Count(valves[v], first, share * hours[v]);
            }
        }
    }

    private void Count(IReadOnlyList<BlockSeason> blocks, int first, double hours)
    {
        foreach (var block in blocks)
        {
            var m3 = hours * block.FlowM3PerH;
            totalM3 += m3;
            ripeningM3 += first >= decidedDays && first < block.Days && block.Ripening[first] ? m3 : 0;
            byPriority[block.Block.Priority] = byPriority.GetValueOrDefault(block.Block.Priority) + m3;
        }
    }
}
