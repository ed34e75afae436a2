using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class ConsequenceWordsTests
{
    private static readonly DateOnly Tuesday = new(2026, 1, 20);
    private static readonly WeekEdits Closed = WeekEdits.None.With(new ValveClosed("V3", Tuesday, Tuesday.AddDays(3)));

    [Fact]
    public void Blocks_that_pass_their_ceiling_are_named_with_the_day_and_the_water() => Assert.Equal(
        "With V3 closed from the night of Tue 20 Jan to the night of Fri 23 Jan, two blocks pass their ceiling: B04 on Thu 22 Jan, B09 on Sat 24 Jan; 120 m³ less is used.",
        ConsequenceWords.Say(Closed, Following(-120, Block("B09", null, 4), Block("B04", null, 2)), UnitChoice.Metric));

    [Fact]
    public void One_that_passes_it_sooner_says_when_it_would_have_and_one_that_is_spared_is_told() => Assert.Equal(
        "If B04 gets 3 h, one block passes its ceiling sooner: B04 on Thu 22 Jan instead of Sat 24 Jan; B02 no longer passes its ceiling; as much water is used as before.",
        ConsequenceWords.Say(WeekEdits.None.WithHours("B04", 3, []), Following(0.2, Block("B04", 4, 2), Block("B02", 3, null)), UnitChoice.Metric));

    [Fact]
    public void Those_that_pass_it_now_and_those_that_pass_it_sooner_are_told_apart() => Assert.Contains(
        "two blocks pass their ceiling, or pass it sooner: B04 on Thu 22 Jan instead of Sat 24 Jan, B02 on Fri 23 Jan;",
        ConsequenceWords.Say(Closed, Following(-10, Block("B04", 4, 2), Block("B02", null, 3)), UnitChoice.Metric),
        StringComparison.Ordinal);

    [Fact]
    public void Blocks_that_were_past_it_anyway_and_get_worse_are_named_by_their_days_or_their_peak() => Assert.Equal(
        "If A5 gets 30 h, two blocks past their ceiling get worse: A5 on seven days instead of one, A6 up to 16.4 bar instead of 15.2; 826 m³ less is used.",
        ConsequenceWords.Say(WeekEdits.None.WithHours("A5", 30, []), Following(-826, Past("A6", (3, 15.2), (3, 16.4)), Past("A5", (1, 14.2), (7, 17.9))), UnitChoice.Metric));

    [Fact]
    public void They_are_told_beside_those_that_pass_it_anew() => Assert.Contains(
        "one block passes its ceiling: B04 on Thu 22 Jan; one block past its ceiling gets worse: A5 on seven days instead of one; B02 no longer passes its ceiling;",
        ConsequenceWords.Say(Closed, Following(-826, Block("B04", null, 2), Past("A5", (1, 14.2), (7, 17.9)), Block("B02", 3, null)), UnitChoice.Metric),
        StringComparison.Ordinal);

    [Fact]
    public void A_peak_that_is_hardly_higher_is_not_told() => Assert.Contains(
        "no further block passes its ceiling;", ConsequenceWords.Say(Closed, Following(-10, Past("A6", (3, 15.2), (3, 15.4))), UnitChoice.Metric), StringComparison.Ordinal);

    [Fact]
    public void Many_are_counted() => Assert.EndsWith(
        "six blocks pass their ceiling: B1 on Wed 21 Jan, B2 on Wed 21 Jan, B3 on Wed 21 Jan, B4 on Wed 21 Jan and two more; 1\u202F200 m³ more is used.",
        ConsequenceWords.Say(Closed.WithHours("B01", 2, []), Following(1200, [.. Enumerable.Range(1, 6).Select(i => Block($"B{i}", null, 1))]), UnitChoice.Metric),
        StringComparison.Ordinal);

    [Fact]
    public void Where_none_passes_the_greatest_rise_of_the_chance_is_told() => Assert.Equal(
        "With these two changes, no further block passes its ceiling; the chance of it rises most in B07, from 20 % to 44 %; 10 m³ less is used.",
        ConsequenceWords.Say(Closed.WithHours("B01", 2, []), Following(-10, Block("B06", null, null, 0.1, 0.2), Block("B07", null, null, 0.2, 0.44)), UnitChoice.Metric));

    [Fact]
    public void A_set_that_moves_is_the_cause_and_not_those_that_stay() => Assert.StartsWith(
        "If V3 moves from Tue 21 Jan 20:00 to Wed 22 Jan 20:00, no further",
        ConsequenceWords.Say(WeekEdits.None.WithSets("V3", [new SetPinned("V3", Samples.AsOf, 4), new SetPinned("V3", Samples.AsOf.AddHours(14), 4) { Was = new SetPlace(Samples.AsOf.AddHours(-10), 4) }], []), Following(0), UnitChoice.Metric),
        StringComparison.Ordinal);

    [Fact]
    public void A_rise_too_small_to_tell_is_not_told() => Assert.DoesNotContain(
        "rises", ConsequenceWords.Say(Closed, Following(-10, Block("B06", null, null, 0.10, 0.14)), UnitChoice.Metric), StringComparison.Ordinal);

    [Fact]
    public void In_short_it_is_said_who_comes_off_worse()
    {
        Assert.Equal("No block comes off worse", ConsequenceWords.InShort(Following(-10, Block("B02", 3, null))));
        Assert.Equal("A5 comes off worse", ConsequenceWords.InShort(Following(-10, Past("A5", (1, 14.2), (7, 17.9)))));
        Assert.Equal("B04, A5 come off worse", ConsequenceWords.InShort(Following(-10, Block("B04", null, 2), Past("A5", (1, 14.2), (7, 17.9)))));
        Assert.Equal(
            "B1, B2, B3, B4 and two more come off worse",
            ConsequenceWords.InShort(Following(-10, [.. Enumerable.Range(1, 6).Select(i => Block($"B{i}", null, 1))])));
    }

    private static PlanConsequences Following(double m3More, params BlockConsequence[] blocks) =>
        new() { Blocks = blocks, Sources = [], HoursMore = 0, M3More = m3More };

    private static BlockConsequence Block(string code, int? pastBefore, int? pastAfter, double chanceBefore = 0.1, double chanceAfter = 0.1) =>
        new(code, Standing(pastBefore, chanceBefore), Standing(pastAfter, chanceAfter));

    private static BlockConsequence Past(string code, (int Days, double PeakBar) before, (int Days, double PeakBar) after) =>
        new(code, new(6, 180, 0, 1, before.Days, Tuesday, before.PeakBar), new(2, 60, 0, 1, after.Days, Tuesday, after.PeakBar));

    private static BlockStanding Standing(int? past, double chance) =>
        new(6, 180, 0, chance, past is null ? 0 : 1, past is { } day ? Tuesday.AddDays(day) : null, 13);
}
