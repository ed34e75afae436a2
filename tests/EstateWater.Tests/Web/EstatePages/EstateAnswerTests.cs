using EstateWater.Planning;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Parts.Units;
using static EstateWater.Tests.Web.SmallEstate;

namespace EstateWater.Tests.Web.EstatePages;

public sealed class EstateAnswerTests
{
    private static readonly PlannedHeatSpell TuesdaysHeat = new("home", new DateOnly(2025, 1, 28), new DateOnly(2025, 1, 30), 39);

    private static readonly double[] Steady = Days(11, 11);

    private static readonly double[] Rising = Days(12, 17);

    [Fact]
    public void All_is_safe_when_no_middle_passes_its_ceiling() =>
        Assert.Equal("Safe: all two blocks stay under their ceiling through Tuesday’s heat, even without water.", Sentence([TuesdaysHeat], Block("B1", Steady), Block("B2", Steady)));

    [Fact]
    public void Says_first_how_many_blocks_are_not_safe_even_with_the_plan() =>
        Assert.Equal(
            "Not safe: one of four blocks passes its ceiling in Tuesday’s heat or before even with the plan; without water, three.",
            Sentence([TuesdaysHeat], Block("B1", Rising, Steady), Block("B2", Rising, Steady), Block("B3", Rising), Block("B4", Steady)));

    [Fact]
    public void A_block_that_passes_only_after_the_heat_does_not_count() =>
        Assert.Equal(
            "Safe: the one block stays under its ceiling through tomorrow’s heat, even without water.",
            Sentence([new PlannedHeatSpell("home", Today.AddDays(1), Today.AddDays(2), 36)], Block("B1", Rising)));

    [Fact]
    public void Counts_blocks_that_are_above_already_and_do_not_come_back_with_those_that_pass() =>
        Assert.Equal(
            "Not safe: two of four blocks stay or come above their ceiling within the next ten days even with the plan; without water, four.",
            Sentence([], Block("B1", Days(15, 16), Days(15, 12)), Block("B2", Days(15, 16)), Block("B3", Rising), Block("B4", Rising, Steady)));

    [Fact]
    public void A_block_that_only_stays_above_does_not_come_above() =>
        Assert.Equal(
            "Not safe: one of two blocks stays above its ceiling by the end of Tuesday’s heat even with the plan; without water, as many.",
            Sentence([TuesdaysHeat], Block("B1", Days(15, 16), Days(15, 15.5)), Block("B2", Steady)));

    [Fact]
    public void Water_that_comes_anyway_may_bring_a_block_back() =>
        Assert.Equal(
            "Safe: the block above its ceiling today comes back under it within the next ten days, and no other passes it, even without water.",
            Sentence([], Block("B1", Days(15, 12)), Block("B2", Steady)));

    [Fact]
    public void A_plan_that_covers_all_says_what_would_be_without_it() =>
        Assert.Equal(
            "Safe with the plan: all two blocks stay under their ceiling through Tuesday’s heat; without water, one would pass it.",
            Sentence([TuesdaysHeat], Block("B1", Rising, Steady), Block("B2", Steady)));

    [Fact]
    public void A_plan_that_brings_all_back_says_so() =>
        Assert.Equal(
            "Safe with the plan: the two blocks above their ceiling today come back under it by the end of Tuesday’s heat; without water, two would stay or come above it.",
            Sentence([TuesdaysHeat], Block("B1", Days(15, 16), Days(15, 12)), Block("B2", Days(15, 16), Days(15, 12))));

    [Fact]
    public void A_day_above_the_ceiling_with_the_plan_is_not_covered()
    {
        var planned = Days(12, 12);
        planned[3] = 14.1;
        var answer = EstateAnswer.From(PlanOf(Block("B1", Rising, planned)), Today, UnitChoice.Metric);
        Assert.Equal("Not safe: the one block passes its ceiling within the next ten days even with the plan; without water, as many.", answer.Sentence);
        Assert.True(answer.NeedsAttention);
    }

    [Fact]
    public void A_plan_that_covers_all_needs_no_attention() =>
        Assert.False(EstateAnswer.From(PlanOf(Block("B1", Rising, Steady)), Today, UnitChoice.Metric).NeedsAttention);

    [Fact]
    public void Heat_that_has_begun_is_todays() =>
        Assert.Contains(
            "before today’s heat ends",
            Sentence([new PlannedHeatSpell("home", Today.AddDays(-1), Today.AddDays(8), 36)], Block("B1", Rising)),
            StringComparison.Ordinal);

    [Fact]
    public void Heat_of_another_station_that_overlaps_prolongs_the_spell() =>
        Assert.StartsWith(
            "Not safe: one of two blocks passes",
            Sentence(
                [new PlannedHeatSpell("home", Today.AddDays(1), Today.AddDays(2), 36), new PlannedHeatSpell("hill", Today.AddDays(2), Today.AddDays(9), 36)],
                Block("B1", Rising),
                Block("B2", Steady)),
            StringComparison.Ordinal);

    private static string Sentence(PlannedHeatSpell[] heat, params BlockPlan[] blocks) =>
        EstateAnswer.From(PlanOf(blocks) with { HeatSpells = heat }, Today, UnitChoice.Metric).Sentence;

    private static BlockPlan Block(string code, double[] unwatered, double[]? planned = null) => BlockPlanOf(code, 1, unwatered, planned);

    private static double[] Days(double first, double last) => [.. Enumerable.Range(0, 11).Select(day => first + (last - first) * day / 10)];
}
