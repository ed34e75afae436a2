using EstateWater.Planning;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Tests.Planning.WhatIf;

public sealed class ChangeConflictsTests(TwoSourceEstate estate) : IClassFixture<TwoSourceEstate>
{
    private static readonly DateOnly Today = SmallEstate.Today;

    public static TheoryData<PlanChange, string> Alone => new()
    {
        { new ValveClosed("V99", Today, Today), "There is no valve V99." },
        { new SourceOut("lake", Today, Today), "There is no source lake." },
        { new SetPinned("V99", At(2, 22), 4), "There is no valve V99." },
        { new ValveClosed("V1", Today.AddDays(2), Today), "the last night is before the first" },
        { new SourceOut("dam", Today.AddDays(40), Today.AddDays(42)), "none of these nights is in the plan" },
        { new SetPinned("V1", At(2, 22), 0), "hours must be whole quarter hours" },
        { new SetPinned("V1", At(2, 22), double.NaN), "hours must be whole quarter hours" },
        { new SetPinned("V1", At(2, 22), 1.1), "hours must be whole quarter hours" },
        { new SetPinned("V1", At(2, 19), 4), "outside the hours of dam, which that night is open from Thu 22 Jan 20:00 to Fri 08:00" },
        { new SetPinned("V1", At(3, 6), 4), "outside the hours of dam, which that night is open from Thu 22 Jan 20:00 to Fri 08:00" },
        { new SetPinned("V1", At(-3, 22), 4), "outside the hours of dam" },
        { new SetPinned("V1", At(2, 22).AddMinutes(7), 4), "begin at 20:00 or whole quarter hours after it" },
    };

    [Theory]
    [MemberData(nameof(Alone))]
    public void A_change_that_cannot_be_kept_is_refused_in_words(PlanChange change, string words)
    {
        Assert.Contains(words, Assert.Single(estate.Conflicts(change)), StringComparison.Ordinal);
        var refused = Assert.Throws<ArgumentException>(() => estate.With(change));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_that_can_be_kept_have_no_conflicts() =>
        Assert.Empty(estate.Conflicts(new ValveClosed("V3", Today, Today.AddDays(2)), new SetPinned("V1", At(2, 20), 12), new SetPinned("V3", At(4, 20), 2)));

    [Fact]
    public void Pinned_sets_that_ask_for_more_than_the_source_gives_are_named_with_the_moment()
    {
        var pins = estate.Request.Valves.Where(v => v.SourceCode == "dam").Select((v, i) => new SetPinned(v.Code, At(2, 20 + i), 6)).ToArray<PlanChange>();
        var conflicts = estate.Conflicts(pins);
        Assert.Contains(conflicts, c => c.StartsWith("V1 and V3 together ask for", StringComparison.Ordinal) && c.EndsWith("at Thu 22 Jan 21:00; dam gives 34.0.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_valve_cannot_open_while_it_is_open() =>
        Assert.All(estate.Conflicts(new SetPinned("V1", At(2, 20), 4), new SetPinned("V1", At(2, 23), 4)), c => Assert.Contains("while it is open already", c, StringComparison.Ordinal));

    [Fact]
    public void Sets_that_touch_are_no_conflict() =>
        Assert.Empty(estate.Conflicts(new SetPinned("V1", At(2, 20), 3), new SetPinned("V1", At(2, 23), 4)));

    [Fact]
    public void A_set_on_a_night_that_was_taken_away_names_what_took_it()
    {
        Assert.Equal(
            ["V1 opens Thu 22 Jan 22:00 for 4 h, but V1 closed on the night of Thu 22 Jan."],
            estate.Conflicts(new SetPinned("V1", At(2, 22), 4), new ValveClosed("V1", Today.AddDays(2), Today.AddDays(2))));
        Assert.Equal(
            ["V1 opens Thu 22 Jan 22:00 for 4 h, but dam out from the night of Wed 21 Jan to the night of Thu 22 Jan."],
            estate.Conflicts(new SetPinned("V1", At(2, 22), 4), new SourceOut("dam", Today.AddDays(1), Today.AddDays(2))));
    }

    // A set begun after midnight belongs to the night that opened the evening before.
    [Fact]
    public void A_night_lasts_past_midnight()
    {
        Assert.NotEmpty(estate.Conflicts(new SetPinned("V1", At(3, 2), 4), new SourceOut("dam", Today.AddDays(2), Today.AddDays(2))));
        Assert.Empty(estate.Conflicts(new SetPinned("V1", At(3, 2), 4), new SourceOut("dam", Today.AddDays(3), Today.AddDays(3))));
    }

    [Fact]
    public void Hours_by_hand_and_a_pinned_set_of_one_valve_contradict_each_other()
    {
        var request = estate.Request with { HoursByHand = new Dictionary<string, double> { ["B1"] = 5 }, Changes = [new SetPinned("V1", At(2, 22), 4)] };
        Assert.Contains("B1 on it has hours by hand", Assert.Single(Planner.Conflicts(estate.Fitted, request)).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_is_left_of_the_season_is_refused()
    {
        var request = TwoSourceEstate.Of(blocks: 2, maxFlowM3PerH: 60);
        request = request with { Sources = [.. request.Sources.Select(s => s with { SeasonAllocationM3 = 200 })], Changes = [new SetPinned("V1", At(2, 20), 12)] };
        var fitted = Planner.Fit(request, TestContext.Current.CancellationToken);
        Assert.Contains("left of its season's water", Assert.Single(Planner.Conflicts(fitted, request)).ToString(), StringComparison.Ordinal);
    }

    private static DateTimeOffset At(int day, int hour) =>
        new(Today.AddDays(day).ToDateTime(new TimeOnly(hour, 0)), TimeSpan.FromHours(10.5));
}
