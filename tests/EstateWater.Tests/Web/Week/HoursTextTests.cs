using CsCheck;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class HoursTextTests
{
    [Theory]
    [InlineData("6.5", 6.5)]
    [InlineData("6,5", 6.5)]
    [InlineData(" 6 h ", 6)]
    [InlineData("6,5h", 6.5)]
    [InlineData("0", 0)]
    [InlineData(".5", 0.5)]
    [InlineData("6.1", 6)]
    [InlineData("6.13", 6.25)]
    [InlineData("6.375", 6.5)]
    public void Reads_what_people_type_in_whole_quarter_hours(string text, double hours) =>
        Assert.Equal((hours, null), HoursText.Read(text, 24, UnitChoice.Metric));

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("six")]
    [InlineData("-1")]
    [InlineData("24.5")]
    [InlineData("1,234.5")]
    [InlineData("1.000.000")]
    [InlineData("1e1")]
    [InlineData("NaN")]
    public void Refuses_anything_else_with_the_rule_and_an_example(string? text) =>
        Assert.Equal((null, "Hours must be between 0 and 24, like 6.5"), HoursText.Read(text, 24, UnitChoice.Metric));

    [Fact]
    public void Steps_stay_on_quarters_and_within_bounds() =>
        Gen.Double[0, 24].Sample(hours =>
        {
            foreach (var direction in new[] { -1, 1 })
            {
                var stepped = HoursText.Step(hours, direction, 24);
                Assert.InRange(stepped, 0, 24);
                Assert.Equal(Math.Round(stepped * 4), stepped * 4);
            }
        });

    [Fact]
    public void What_is_shown_reads_back_as_the_same_hours() =>
        Gen.Select(Gen.Int[0, 96], Gen.Int[0, NumberStyle.All.Count - 1]).Sample((quarters, style) =>
        {
            var units = UnitChoice.Metric with { Numbers = NumberStyle.All[style] };
            Assert.Equal((quarters / 4.0, null), HoursText.Read(units.Trimmed(quarters / 4.0), 24, units));
        });
}
