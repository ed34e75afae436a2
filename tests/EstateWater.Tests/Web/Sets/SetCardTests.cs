using Bunit;
using EstateWater.Web.Features.Sets;

namespace EstateWater.Tests.Web.Sets;

public sealed class SetCardTests : BunitContext
{
    private static readonly DateTimeOffset Start = new(2025, 1, 22, 20, 0, 0, TimeSpan.FromHours(2));

    private static readonly SetLine Line = new()
    {
        SetId = 7,
        Valve = "V01",
        Source = "bore",
        Blocks = ["B01 Long Rows", "B02"],
        Start = Start,
        End = Start.AddHours(6.5),
        Hours = 6.5,
        FlowM3PerH = 30,
        Night = new DateOnly(2025, 1, 22),
    };

    [Fact]
    public void A_set_says_valve_blocks_times_and_hours()
    {
        var card = Card(Line);
        Assert.Equal("V01 B01 Long Rows, B02", card.Find("h3").TextContent);
        Assert.Equal("20:00–02:30 6.5 h on bore", string.Join(' ', card.Find(".set-times").TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
    }

    [Fact]
    public void The_form_waits_for_the_script_and_offers_the_planned_hours()
    {
        var form = Card(Line).Find("form");
        Assert.True(form.HasAttribute("hidden"));
        Assert.Equal("7", form.GetAttribute("data-set"));
        var hours = form.QuerySelector("input[name=hours]")!;
        Assert.Equal(("6.5", "decimal"), (hours.GetAttribute("value"), hours.GetAttribute("inputmode")));
    }

    [Fact]
    public void A_confirmed_set_has_no_form_and_says_what_was_run()
    {
        var card = Card(Line with { Confirmed = new ConfirmedHours(6, 171.5, "Ben", null, Start.AddHours(11)) });
        Assert.Empty(card.FindAll("form"));
        Assert.Equal("Confirmed: 6 h, meter 171.5 m³ (Ben, Thu 07:00)", card.Find(".set-state").TextContent);
    }

    [Fact]
    public void A_set_that_could_not_run_says_why()
    {
        var card = Card(Line with { Confirmed = new ConfirmedHours(0, null, "Ben", "<b>pump</b>", Start) });
        Assert.Equal("Confirmed: could not run: <b>pump</b> (Ben, Wed 20:00)", card.Find(".set-state").TextContent);
    }

    private IRenderedComponent<SetCard> Card(SetLine line) => Render<SetCard>(p => p.Add(c => c.Set, line));
}
