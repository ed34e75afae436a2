using System.Text.Json;
using Bunit;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

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
    public void The_form_offers_the_planned_hours_and_makes_room_for_a_correction_once_confirmed()
    {
        var form = Card(Line).Find("form");
        Assert.False(form.HasAttribute("hidden"));
        Assert.True(Card(Line with { Confirmed = new ConfirmedHours(6, null, "Ben", null, Start) }).Find("form").HasAttribute("hidden"));
        Assert.Equal("7", form.GetAttribute("data-set"));
        var hours = form.QuerySelector("input[name=hours]")!;
        Assert.Equal(("6.5", "decimal"), (hours.GetAttribute("value"), hours.GetAttribute("inputmode")));
    }

    [Fact]
    public void A_confirmed_set_says_what_was_run_and_holds_it_ready_for_a_correction()
    {
        var entry = Guid.NewGuid();
        var confirmed = new ConfirmedHours(6, 171.5, "Ben", null, Start.AddHours(11)) { StartedAt = Start.AddMinutes(10), SetId = 3, EntryId = entry, Entries = [entry], Photos = ["/a-photo"] };
        var card = Card(Line with { Confirmed = confirmed });
        Assert.Equal("Confirmed: 6 h, meter 171.5 m³ (Ben, Thu 23 Jan 07:00)", card.Find(".set-state").TextContent);
        Assert.Equal((entry.ToString(), "3"), (card.Find(".set-state").GetAttribute("data-entry"), card.Find("form").GetAttribute("data-entry-set")));
        Assert.Equal(("20:10", "6", "171.5"), (Value(card, "opened"), Value(card, "hours"), Value(card, "meter")));
        Assert.Equal("/a-photo", card.Find("a.set-photo").GetAttribute("href"));
    }

    [Fact]
    public void A_set_that_could_not_run_says_why()
    {
        var confirmed = new ConfirmedHours(0, null, "Ben", "<b>dark</b>", Start) { NotRun = NotRunReason.PumpDown };
        Assert.Equal("Confirmed: could not run, pump down: <b>dark</b> (Ben, Wed 22 Jan 20:00)", Card(Line with { Confirmed = confirmed }).Find(".set-state").TextContent);
    }

    [Fact]
    public void Days_and_clock_times_are_the_readers()
    {
        var words = new SetsWords(FieldLanguage.English, UnitChoice.Us);
        var said = Line with { Confirmed = new ConfirmedHours(0, null, "Ben", null, Start) { NotRun = NotRunReason.PumpDown } };
        var card = Render<SetCard>(p => p.Add(c => c.Set, said).Add(c => c.Words, words));
        Assert.Contains("8:00 PM–2:30 AM", card.Find(".set-times").TextContent, StringComparison.Ordinal);
        Assert.Equal("Confirmed: could not run, pump down (Ben, Wed Jan 22 8:00 PM)", card.Find(".set-state").TextContent);
    }

    [Fact]
    public void In_spanish_every_word_is_spanish()
    {
        var card = Render<SetCard>(p => p.Add(c => c.Set, Line).Add(c => c.Words, new SetsWords(FieldLanguage.Spanish, UnitChoice.Metric)));
        Assert.Equal(("Empezar V01", "Parar V01", "Guardar V01"), (card.Find(".set-start").TextContent, card.Find(".set-stop").TextContent, card.Find(".set-keep").TextContent));
        Assert.Equal("Otro V01", card.Find("summary").TextContent);
        Assert.Equal(["bomba parada", "válvula rota", "tubo reventado", "sin luz", "otra cosa"], card.FindAll(".set-reason").Select(r => r.TextContent.Trim()));
        Assert.Equal("Sin confirmar", card.Find(".set-state").TextContent);
    }

    [Fact]
    public void What_the_script_says_of_a_stopped_set_is_hours_and_no_clock_time()
    {
        var words = JsonDocument.Parse(new SetsWords(FieldLanguage.Spanish, UnitChoice.Metric).ScriptJson).RootElement;
        Assert.Equal("Parado después de {0} h · sin guardar", words.GetProperty("stopped").GetString());
    }

    [Fact]
    public void The_script_is_told_the_plan_that_an_entry_is_held_against()
    {
        var form = Card(Line).Find("form");
        Assert.Equal(("V01", "6.5"), (form.GetAttribute("data-valve"), form.GetAttribute("data-hours")));
    }

    private static string? Value(IRenderedComponent<SetCard> card, string name) => card.Find($"input[name={name}]").GetAttribute("value");

    private IRenderedComponent<SetCard> Card(SetLine line) => Render<SetCard>(p => p.Add(c => c.Set, line).Add(c => c.Words, new SetsWords(FieldLanguage.English, UnitChoice.Metric)));
}
