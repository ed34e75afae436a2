using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>Heat spells that a station's forecast holds.</summary>
internal static class HeatAhead
{
    private const double LikelyShare = 0.5;

    /// <summary>
    /// Those of the single forecast, and any other that at least half the members hold. Where there is no single
    /// forecast, the middle of the members stands for it.
    /// </summary>
    public static IReadOnlyList<HeatSpell> Of(StationWeather weather, int days)
    {
        var ahead = weather.Ahead;
        var usual = StationPercentile.For(weather.Station.Days.Select(d => (d.Date, d.TMaxC)), HeatSpellRule.Default);
        var until = ahead.Today.AddDays(days);
        var run = ahead.SingleRun?.Where(d => d.Date < until).Select(d => (d.Date, (double?)d.TMaxC))
            ?? Enumerable.Range(0, days).Select(i => (ahead.Today.AddDays(i), (double?)ahead.MedianTMaxC(i)));
        var spells = Spells(run, usual).ToList();
        foreach (var spell in LikelyAmongMembers(ahead, days, usual))
        {
            if (!spells.Exists(s => s.From <= spell.To && spell.From <= s.To))
            {
                spells.Add(spell);
            }
        }

        return [.. spells.OrderBy(s => s.From)];
    }

    /// <summary>Which of the days ahead lie in a spell.</summary>
    public static IReadOnlyList<bool> DaysIn(IReadOnlyList<HeatSpell> spells, DateOnly today, int days) =>
        [.. Enumerable.Range(0, days).Select(i => spells.Any(s => s.From <= today.AddDays(i) && today.AddDays(i) <= s.To))];

    private static IEnumerable<HeatSpell> LikelyAmongMembers(MembersAhead ahead, int days, Func<DateOnly, double?> usual)
    {
        var inSpell = new int[days];
        foreach (var version in ahead.Versions)
        {
            foreach (var spell in Spells(version.Select(d => (d.Date, (double?)d.TMaxC)), usual))
            {
                for (var day = spell.From; day <= spell.To; day = day.AddDays(1))
                {
                    inSpell[day.DayNumber - ahead.Today.DayNumber]++;
                }
            }
        }

        // A day that half the members count to a spell, at their middle temperature; other days end it.
        return Spells(Enumerable.Range(0, days).Select(i => (
            ahead.Today.AddDays(i),
            inSpell[i] >= LikelyShare * ahead.Versions.Count ? Math.Max(ahead.MedianTMaxC(i), HeatSpellRule.Default.ThresholdC) : (double?)null)), usual);
    }

    private static IReadOnlyList<HeatSpell> Spells(IEnumerable<(DateOnly, double?)> days, Func<DateOnly, double?> usual) => HeatSpells.Find(days, HeatSpellRule.Default, usual);
}
