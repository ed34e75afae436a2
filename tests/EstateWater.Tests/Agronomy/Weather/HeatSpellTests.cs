using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class HeatSpellTests
{
    private static readonly DateOnly First = new(2025, 7, 14);

    [Fact]
    public void Three_days_at_the_threshold_make_a_spell() =>
        Assert.Equal([new HeatSpell(First, First.AddDays(2), 35, 3, Severe: false)], Find([35, 35, 35]));

    [Fact]
    public void Two_days_do_not() => Assert.Empty(Find([41, 41, 34.9, 41, 41]));

    [Fact]
    public void A_missing_day_breaks_a_spell() => Assert.Empty(Find([36, 36, null, 36, 36]));

    [Fact]
    public void A_date_left_out_breaks_a_spell()
    {
        (DateOnly, double?)[] days = [(First, 36), (First.AddDays(1), 36), (First.AddDays(3), 36), (First.AddDays(4), 36)];

        Assert.Empty(HeatSpells.Find(days, HeatSpellRule.Default with { BridgeGapDays = 1 }));
    }

    [Fact]
    public void Crosses_the_end_of_a_month_and_keeps_its_hottest_day()
    {
        var from = new DateOnly(2025, 1, 30);

        var spell = Assert.Single(HeatSpells.Find(Days(from, [30, 36, 37.2, 36, 35, 30]), HeatSpellRule.Default));

        Assert.Equal(new HeatSpell(new DateOnly(2025, 1, 31), new DateOnly(2025, 2, 3), 37.2, 4, Severe: false), spell);
    }

    [Theory]
    [InlineData(new[] { 38.0, 35, 35 }, false)]
    [InlineData(new[] { 38.0, 35, 38 }, true)]
    [InlineData(new[] { 37.9, 37.9, 37.9 }, false)]
    [InlineData(new[] { 35.0, 40, 35 }, true)]
    [InlineData(new[] { 35.0, 39.9, 35 }, false)]
    public void Severe_at_38_twice_or_40_once(double[] tMaxC, bool severe) =>
        Assert.Equal(severe, Assert.Single(Find([.. tMaxC.Select(t => (double?)t)])).Severe);

    [Fact]
    public void A_cooler_day_is_bridged_only_when_the_rule_says_so()
    {
        double?[] tMaxC = [36, 36, 33, 36, 36];

        Assert.Empty(Find(tMaxC));
        var spell = Assert.Single(HeatSpells.Find(Days(First, tMaxC), HeatSpellRule.Default with { BridgeGapDays = 1 }));
        Assert.Equal(5, spell.Days);
    }

    [Fact]
    public void The_stations_own_percentile_raises_the_bar_and_never_lowers_it()
    {
        double?[] tMaxC = [36, 37, 38, 36];

        Assert.Empty(HeatSpells.Find(Days(First, tMaxC), HeatSpellRule.Default, _ => 37));
        Assert.Single(HeatSpells.Find(Days(First, tMaxC), HeatSpellRule.Default, _ => 36));
        Assert.Single(HeatSpells.Find(Days(First, tMaxC), HeatSpellRule.Default, _ => null));
        Assert.Single(HeatSpells.Find(Days(First, tMaxC), HeatSpellRule.Default with { Percentile = null }, _ => 99));
        Assert.Empty(HeatSpells.Find(Days(First, [34, 34, 34]), HeatSpellRule.Default, _ => 20));
    }

    [Fact]
    public void Order_of_the_days_does_not_matter_but_a_date_given_twice_is_refused()
    {
        var days = Days(First, [36, 36, 36]).ToList();

        Assert.Single(HeatSpells.Find(days.AsEnumerable().Reverse(), HeatSpellRule.Default));
        Assert.Throws<ArgumentException>(() => HeatSpells.Find([.. days, days[0]], HeatSpellRule.Default));
    }

    [Fact]
    public void A_rule_refuses_what_is_no_temperature()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new HeatSpellRule { ThresholdC = double.NaN });

        Assert.Equal("ThresholdC", error.ParamName);
        Assert.Contains("20 to 55 °C", error.Message, StringComparison.Ordinal);
    }

    private static IReadOnlyList<HeatSpell> Find(double?[] tMaxC) => HeatSpells.Find(Days(First, tMaxC), HeatSpellRule.Default);

    private static IEnumerable<(DateOnly Date, double? TMaxC)> Days(DateOnly from, double?[] tMaxC) =>
        tMaxC.Select((t, i) => (from.AddDays(i), t));
}
