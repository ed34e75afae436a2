using System.Text.Json;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class WeekEditsTests
{
    private static readonly DateOnly Tuesday = new(2026, 1, 20);
    private static readonly SetPinned Pin = new("V3", new DateTimeOffset(2026, 1, 22, 22, 0, 0, TimeSpan.FromHours(10.5)), 6);

    private static readonly WeekEdits All = WeekEdits.None
        .WithHours("B01", 6.5, [])
        .With(new ValveClosed("V1", Tuesday, Tuesday.AddDays(2)))
        .With(new SourceOut("dam", Tuesday, Tuesday))
        .WithSets("V3", [Pin, Pin with { Start = Pin.Start.AddDays(2) }], []);

    [Fact]
    public void What_is_kept_as_text_comes_back_the_same()
    {
        var back = WeekEdits.FromJson(All.ToJson());
        Assert.Equal(All.HoursByHand, back.HoursByHand);
        Assert.Equal(All.Changes, back.Changes);
    }

    [Theory]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"Changes\":[{\"$type\":\"flood\"}]}")]
    [InlineData("{\"Changes\":")]
    public void Text_that_is_no_changes_is_refused(string text) => Assert.Throws<JsonException>(() => WeekEdits.FromJson(text));

    [Fact]
    public void Each_change_is_a_line_that_takes_away_itself_alone()
    {
        var lines = ChangeLine.Of(All, UnitChoice.Metric);
        Assert.Equal(
            [
                "B01 gets 6.5 h",
                "V1 closed from the night of Tue 20 Jan to the night of Thu 22 Jan",
                "dam out on the night of Tue 20 Jan",
                "V3 opens Thu 22 Jan 22:00 for 6 h, Sat 24 Jan 22:00 for 6 h",
            ],
            lines.Select(l => l.Words));
        Assert.All(lines, line => Assert.Equal(lines.Where(l => l != line).Select(l => l.Words), ChangeLine.Of(line.Without, UnitChoice.Metric).Select(l => l.Words)));
    }

    [Fact]
    public void A_set_is_told_by_what_was_done_to_it_and_remembers_it_as_text()
    {
        var edits = WeekEdits.None
            .WithSets("V3", [Pin, Pin with { Start = Pin.Start.AddDays(4), Was = new SetPlace(Pin.Start.AddDays(1), 6) }], [])
            .WithSets("V4", [Pin with { Valve = "V4", Was = new SetPlace(Pin.Start, 4.5) }], [])
            .WithSets("V5", [Pin with { Valve = "V5", Was = new SetPlace(Pin.Start.AddHours(-1), 4.5) }], []);
        Assert.Equal(
            [
                "V3 moves from Fri 23 Jan 22:00 to Mon 26 Jan 22:00",
                "V4 on Thu 22 Jan 22:00 runs 6 h instead of 4.5 h",
                "V5 moves from Thu 22 Jan 21:00 to Thu 22 Jan 22:00, 6 h instead of 4.5 h",
            ],
            ChangeLine.Of(WeekEdits.FromJson(edits.ToJson()), UnitChoice.Metric).Select(l => l.Words));
    }

    [Fact]
    public void Sets_placed_on_a_valve_take_the_place_of_those_before_and_of_its_hours()
    {
        var edits = WeekEdits.None.WithHours("B03", 8, []).WithSets("V3", [Pin], ["B03"]).WithSets("V3", [Pin with { Hours = 4 }], ["B03"]);
        Assert.Empty(edits.HoursByHand);
        Assert.Equal([Pin with { Hours = 4 }], edits.Changes);
        Assert.Equal(["V3"], edits.PlacedValves);
    }

    [Fact]
    public void The_same_change_twice_is_one() =>
        Assert.Single(WeekEdits.None.With(new SourceOut("dam", Tuesday, Tuesday)).With(new SourceOut("dam", Tuesday, Tuesday)).Changes);
}
