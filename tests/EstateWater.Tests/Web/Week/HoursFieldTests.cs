using Bunit;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class HoursFieldTests : BunitContext
{
    private readonly List<double> given = [];

    [Fact]
    public void A_comma_counts_as_a_point()
    {
        Field(6).Find("input").Change("7,5");
        Assert.Equal([7.5], given);
    }

    [Fact]
    public void A_mistake_is_named_by_the_field_and_what_was_typed_stays()
    {
        var field = Field(6);
        field.Find("input").Change("sixty");
        Assert.Empty(given);
        Assert.Equal("sixty", field.Find("input").GetAttribute("value"));
        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
        Assert.Equal("Hours must be between 0 and 24, like 6.5", field.Find("#hours-B01-error").TextContent);
    }

    [Theory]
    [InlineData("ArrowUp", 6.25)]
    [InlineData("ArrowDown", 5.75)]
    public void Arrow_keys_step_a_quarter_hour(string key, double hours)
    {
        var field = Field(6);
        field.Find("input").KeyDown(key);
        Assert.Equal([hours], given);
        Assert.Equal(UnitChoice.Metric.Trimmed(hours), field.Find("input").GetAttribute("value"));
    }

    [Fact]
    public void Arrow_keys_step_from_what_was_just_typed()
    {
        var field = Field(6);
        field.Find("input").Input("8");
        field.Find("input").KeyDown("ArrowUp");
        Assert.Equal([8.25], given);
    }

    [Fact]
    public void Whoever_writes_a_comma_sees_one_in_the_field_and_in_the_rule()
    {
        var field = Field(6.25, UnitChoice.Metric with { Numbers = NumberStyle.Comma });
        Assert.Equal("6,25", field.Find("input").GetAttribute("value"));
        field.Find("input").Change("sixty");
        Assert.Equal("Hours must be between 0 and 24, like 6,5", field.Find("#hours-B01-error").TextContent);
    }

    [Fact]
    public void Other_keys_change_nothing()
    {
        Field(6).Find("input").KeyDown("5");
        Assert.Empty(given);
    }

    [Fact]
    public void Half_typed_text_survives_a_redraw_and_a_new_value_replaces_it()
    {
        var field = Field(6);
        field.Find("input").Input("7.");
        field.Render(p => p.Add(f => f.Hours, 6));
        Assert.Equal("7.", field.Find("input").GetAttribute("value"));
        field.Render(p => p.Add(f => f.Hours, 4));
        Assert.Equal("4", field.Find("input").GetAttribute("value"));
    }

    private IRenderedComponent<HoursField> Field(double hours, UnitChoice? units = null) => Render<HoursField>(p => p
        .AddCascadingValue(units ?? UnitChoice.Metric)
        .Add(f => f.Id, "hours-B01")
        .Add(f => f.Label, "Hours for B01")
        .Add(f => f.Hours, hours)
        .Add(f => f.OnHours, given.Add));
}
