using EstateWater.Agronomy.WaterStatus;
using static EstateWater.Agronomy.WaterStatus.WaterPotentialMeasure;

namespace EstateWater.Tests.WaterStatus;

public sealed class StressClassTableTests
{
    // van Leeuwen et al. (2009), J. Int. Sci. Vigne Vin 43:121–134, Table 1; editable defaults, here tested for staying put.
    [Theory]
    [InlineData(Stem, 0.3, 0, "none")]
    [InlineData(Stem, 0.75, 1, "weak")]
    [InlineData(Stem, 1.0, 2, "moderate to weak")]
    [InlineData(Stem, 1.2, 3, "moderate to severe")]
    [InlineData(Stem, 1.5, 4, "severe")]
    [InlineData(Leaf, 1.0, 1, "weak")]
    [InlineData(Leaf, 1.35, 3, "moderate to severe")]
    [InlineData(Predawn, 0.4, 2, "moderate to weak")]
    [InlineData(Predawn, 0.81, 4, "severe")]
    public void Sorts_tension_after_van_Leeuwen(WaterPotentialMeasure measure, double tensionMpa, int level, string words) =>
        Assert.Equal(new StressClass(level, words), StressClassTable.VanLeeuwen2009.Classify(measure, tensionMpa));

    // Lategan (2011) in Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 171, Table 6.4.
    [Theory]
    [InlineData(Leaf, 1.1, 0, "none")]
    [InlineData(Leaf, 1.5, 1, "low")]
    [InlineData(Leaf, 1.8, 2, "moderate")]
    [InlineData(Leaf, 2.0, 3, "high")]
    [InlineData(Leaf, 2.2, 4, "severe")]
    [InlineData(Stem, 0.5, 1, "low")]
    [InlineData(Stem, 1.2, 2, "moderate")]
    [InlineData(Stem, 1.7, 3, "high")]
    [InlineData(Stem, 1.95, 4, "severe")]
    public void Sorts_tension_after_Lategan(WaterPotentialMeasure measure, double tensionMpa, int level, string words) =>
        Assert.Equal(new StressClass(level, words), StressClassTable.Lategan2011.Classify(measure, tensionMpa));

    // Common practice: 7–8 bar low, 10–12 moderate, 14 high, 16–18 very high.
    [Theory]
    [InlineData(7, "low")]
    [InlineData(8, "low")]
    [InlineData(10, "moderate")]
    [InlineData(12, "moderate")]
    [InlineData(14, "high")]
    [InlineData(16, "very high")]
    [InlineData(18, "very high")]
    public void Uses_the_words_of_the_trade_for_leaf_tension(double bar, string words) =>
        Assert.Equal(words, StressClassTable.TradeLeaf.ClassifyBar(Leaf, bar).Words);

    [Fact]
    public void A_value_equal_to_a_limit_belongs_to_the_wetter_class()
    {
        foreach (var table in StressClassTable.All)
        {
            foreach (var measure in table.Measures)
            {
                Assert.All(table.LimitsMpa(measure).Select((limit, i) => (limit, i)), p =>
                {
                    Assert.Equal(p.i, table.Classify(measure, p.limit).Level);
                    Assert.Equal(p.i, table.ClassifyBar(measure, p.limit * 10).Level);
                    Assert.Equal(p.i + 1, table.Classify(measure, p.limit + 0.001).Level);
                });
            }
        }
    }

    [Fact]
    public void Eleven_bar_entered_as_tenths_added_up_is_still_eleven_bar() =>
        Assert.Equal("weak", StressClassTable.VanLeeuwen2009.Classify(Leaf, 0.1 + 0.2 + 0.8).Words);

    [Fact]
    public void An_edited_table_is_used_as_it_was_made()
    {
        var own = new StressClassTable("own", "the estate", ["a", "b", "c", "d", "e"], new Dictionary<WaterPotentialMeasure, IReadOnlyList<double>> { [Leaf] = [1, 2, 3, 4] });
        Assert.Equal(new StressClass(2, "c"), own.Classify(Leaf, 2.5));
    }

    [Fact]
    public void Refuses_what_no_vine_shows_and_what_the_table_does_not_know()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StressClassTable.Default.Classify(Leaf, -1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => StressClassTable.Default.Classify(Leaf, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => StressClassTable.Lategan2011.Classify(Predawn, 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StressClassTable(
            "falls", "", ["a", "b", "c", "d", "e"], new Dictionary<WaterPotentialMeasure, IReadOnlyList<double>> { [Leaf] = [1, 2, 2, 4] }));
    }
}
