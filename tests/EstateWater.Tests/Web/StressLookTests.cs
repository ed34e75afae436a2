using EstateWater.Agronomy.WaterStatus;
using EstateWater.Web.Parts;

namespace EstateWater.Tests.Web;

public sealed class StressLookTests
{
    [Fact]
    public void Every_class_of_the_table_in_use_has_a_look() =>
        Assert.Equal(StressClassTable.Default.Words, StressLook.Classes.Select(look => look.Words));

    [Fact]
    public void Words_of_no_class_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StressLook.Of("rather dry"));

    [Fact]
    public void Shades_darken_in_steps_that_grey_printing_keeps() =>
        // 18 steps of lightness between neighbours: told apart side by side and on a grey print.
        Assert.All(StressLook.Classes.Zip(StressLook.Classes.Skip(1)), pair => Assert.True(Colours.Lightness(pair.First.Fill) - Colours.Lightness(pair.Second.Fill) >= 18));

    [Fact]
    public void Labels_can_be_read_on_their_shade() =>
        // WCAG 2.2, 1.4.3: at least 4.5 to 1.
        Assert.All(StressLook.Classes.Append(StressLook.Unknown), look => Assert.True(Colours.Contrast(look.Ink, look.Fill) >= 4.5, look.Key));
}
