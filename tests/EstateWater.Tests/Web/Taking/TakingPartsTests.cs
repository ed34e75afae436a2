using Bunit;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Data.Store.Taken;
using EstateWater.Planning.Rounds;
using EstateWater.Web.Features.Taking;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Taking;

public sealed class TakingPartsTests : BunitContext
{
    private static readonly DateTimeOffset Noon = new(2025, 1, 22, 12, 40, 0, TimeSpan.FromHours(2));

    private static readonly RoundPlan Round = new()
    {
        Date = new DateOnly(2025, 1, 22),
        WindowFrom = Noon.AddHours(-1),
        WindowTo = Noon.AddHours(1.5),
        SolarNoon = Noon,
        Stops = [Stop("B2", 0) with { Question = new ReadingQuestion(WaterPotentialMeasure.Leaf, null, 0, null) }, Stop("B1", 25)],
        Rest = [],
        Settings = new RoundSettings(),
    };

    [Fact]
    public void The_round_lists_its_blocks_in_walking_order_with_leaves_measure_and_time()
    {
        var cards = Cards(FieldLanguage.English);
        Assert.Equal(["B2 Two", "B1 One"], cards.FindAll("li.set-card h3").Select(h => h.TextContent));
        Assert.Equal("8 leaves · leaf · about 11:40", cards.Find(".set-times").TextContent);
        Assert.Contains("Read leaves and stems from 11:40 to 14:10; solar noon 12:40.", cards.Markup, StringComparison.Ordinal);
        Assert.Equal(["Last 12.3 bar, Wed 15 Jan 13:00", "Never read"], cards.FindAll("li.set-card > p:nth-of-type(2)").Select(p => p.TextContent));
    }

    [Fact]
    public void Whoever_chose_megapascals_is_told_and_asked_in_them()
    {
        var units = UnitChoice.Metric with { Pressure = DisplayUnit.Megapascal };
        var words = new ReadingsWords(FieldLanguage.English, units);
        Assert.Equal("Last 1.23 MPa, Wed 15 Jan 13:00", words.LastRead(12.3, new DateTimeOffset(2025, 1, 15, 13, 0, 0, TimeSpan.FromHours(2))));
        var form = Render<TakingForm>(p => p.AddCascadingValue(units).Add(f => f.Words, words));
        Assert.Equal("MPa", form.Find("input[name=unit][checked]").GetAttribute("value"));
        Assert.Equal("MPa", form.Find("#pressure-unit").TextContent);
        form = Render<TakingForm>(p => p.AddCascadingValue(UnitChoice.Metric).Add(f => f.Words, words));
        Assert.Equal("bar", form.Find("input[name=unit][checked]").GetAttribute("value"));
    }

    [Fact]
    public void Cautions_come_before_the_round()
    {
        var cards = Cards(FieldLanguage.English);
        Assert.Contains("wear eye protection", cards.Find("section.caution").TextContent, StringComparison.Ordinal);
        Assert.True(cards.Markup.IndexOf("eye protection", StringComparison.Ordinal) < cards.Markup.IndexOf("set-card", StringComparison.Ordinal));
    }

    [Fact]
    public void A_block_that_was_read_says_so()
    {
        var content = new TakenContent
        {
            Kind = TakenKind.Chamber,
            BlockCode = "B1",
            TakenAt = Noon,
            Leaves = new LeafSet(WaterPotentialMeasure.Stem, [new TakenLeaf(Noon, 8), new TakenLeaf(Noon, 9)]),
        };
        var cards = Cards(FieldLanguage.English, new TakenLine(Guid.NewGuid(), content, "Ana", Noon));
        Assert.Equal(["", "B1: 2 leaves, stem, 8.5 bar (Ana, 12:40)"], cards.FindAll(".set-state").Select(s => s.TextContent));
    }

    [Fact]
    public void In_spanish_round_and_form_are_spanish()
    {
        var cards = Cards(FieldLanguage.Spanish);
        Assert.Equal("8 hojas · hoja · a eso de las 11:40", cards.Find(".set-times").TextContent);
        Assert.Equal("Nunca se ha leído (hoja): su primera serie enseña cómo es el bloque.", cards.Find("[data-stop=B2] .why").TextContent);
        Assert.Contains("lentes de seguridad", cards.Find("section.caution").TextContent, StringComparison.Ordinal);
        var form = Render<TakingForm>(p => p.Add(f => f.Words, new ReadingsWords(FieldLanguage.Spanish, UnitChoice.Metric)));
        Assert.Equal(["Hojas en la cámara", "Tubo de suelo", "Follaje", "Etapa"], form.FindAll("label:has([name=kind])").Select(l => l.TextContent.Trim()));
        Assert.Equal("35 Envero", form.Find("option[value='35']").TextContent);
    }

    [Fact]
    public void Every_input_of_the_form_has_a_label_and_every_message_its_place()
    {
        var form = Render<TakingForm>(p => p.Add(f => f.Words, new ReadingsWords(FieldLanguage.English, UnitChoice.Metric)));
        Assert.All(form.FindAll("input, select"), input => Assert.NotNull(input.Closest("label")));
        Assert.All(form.FindAll("[data-error]"), input => Assert.NotNull(form.Find("#" + input.GetAttribute("data-error"))));
        Assert.All(form.FindAll("input[type=text]").Where(i => i.GetAttribute("inputmode") is not null), input => Assert.Equal("decimal", input.GetAttribute("inputmode")));
    }

    internal static RoundStop Stop(string block, double minutes) => new()
    {
        Block = block,
        Measure = WaterPotentialMeasure.Leaf,
        Leaves = 8,
        SpreadBar = 1,
        From = Noon.AddHours(-1).AddMinutes(minutes),
        To = Noon.AddHours(-1).AddMinutes(minutes + 16),
        WalkM = 0,
        Worth = 1,
        Reason = "Because.",
    };

    private static FieldBlock Block(string code, string name, (double, DateTimeOffset)? last) => new()
    {
        Code = code,
        Name = $"{code} {name}",
        Measure = "leaf",
        Leaves = 8,
        SpreadBar = 1,
        Tubes = [],
        Last = last,
    };

    private IRenderedComponent<RoundCards> Cards(FieldLanguage language, params TakenLine[] taken) => Render<RoundCards>(p => p
        .Add(c => c.Words, new ReadingsWords(language, UnitChoice.Metric))
        .Add(c => c.View, new ReadingsView
        {
            HasEstate = true,
            Now = Noon,
            Round = Round,
            Blocks = [Block("B1", "One", null), Block("B2", "Two", (12.3, new DateTimeOffset(2025, 1, 15, 13, 0, 0, TimeSpan.FromHours(2))))],
            Taken = taken,
        }));
}
