using CsCheck;
using EstateWater.Agronomy.WaterStatus;
using static EstateWater.Agronomy.WaterStatus.WaterPotentialMeasure;

namespace EstateWater.Tests.WaterStatus;

public sealed class MeasureConversionTests
{
    // Class limits of van Leeuwen et al. (2009), Table 1, taken as pairs.
    [Theory]
    [InlineData(0.9, 0.6, 0.2)]
    [InlineData(1.1, 0.9, 0.3)]
    [InlineData(1.3, 1.1, 0.5)]
    [InlineData(1.4, 1.4, 0.8)]
    public void Passes_through_the_class_limits(double leaf, double stem, double predawn)
    {
        Assert.Equal(stem, MeasureConversion.Convert(Leaf, Stem, leaf).TensionMpa, 1e-12);
        Assert.Equal(leaf, MeasureConversion.Convert(Stem, Leaf, stem).TensionMpa, 1e-12);
        Assert.Equal(stem, MeasureConversion.Convert(Predawn, Stem, predawn).TensionMpa, 1e-12);
        Assert.Equal(predawn, MeasureConversion.Convert(Leaf, Predawn, leaf).TensionMpa, 1e-12);
    }

    [Fact]
    public void States_its_error_and_none_where_nothing_is_estimated()
    {
        Assert.Equal(new ConvertedTension(1.05, 0), MeasureConversion.Convert(Leaf, Leaf, 1.05));
        Assert.Equal(0.15, MeasureConversion.Convert(Leaf, Stem, 1.05).ErrorMpa);
        Assert.Equal(0.2, MeasureConversion.Convert(Predawn, Stem, 0.4).ErrorMpa);
    }

    [Fact]
    public void Leaf_to_stem_and_back_is_the_same_leaf_and_never_falls() =>
        Gen.Select(Gen.Double[0.3, 2.5], Gen.Double[0, 0.5]).Sample((leaf, more) =>
        {
            var stem = MeasureConversion.Convert(Leaf, Stem, leaf).TensionMpa;
            return Math.Abs(MeasureConversion.Convert(Stem, Leaf, stem).TensionMpa - leaf) < 1e-9
                && MeasureConversion.Convert(Leaf, Stem, leaf + more).TensionMpa >= stem;
        });

    // Lategan (2011) in Myburgh (2018), p. 171: the printed fits, worked out with a calculator.
    [Theory]
    [InlineData(0.2, 0.431, 1.205)]
    [InlineData(0.3, 0.948, 1.559)]
    [InlineData(0.4, 1.281, 1.753)]
    [InlineData(0.6, 1.665, 1.959)]
    [InlineData(1.0, 2.009, 2.132)]
    public void Lategans_curves_are_the_printed_ones(double predawn, double stem, double leaf)
    {
        Assert.Equal(stem, Lategan2011Fit.StemMpa(predawn), 0.0005);
        Assert.Equal(leaf, Lategan2011Fit.LeafMpa(predawn), 0.0005);
    }

    // Table 6.4 on the same page: leaf classes end at 1.2, 1.75, 1.95, 2.1 (two decimals, the printed limits are rounded to 0.05).
    [Theory]
    [InlineData(0.2, 1.2)]
    [InlineData(0.4, 1.75)]
    [InlineData(0.6, 1.95)]
    [InlineData(0.8, 2.1)]
    public void Lategans_leaf_curve_meets_the_class_limits(double predawn, double limit) =>
        Assert.Equal(limit, Lategan2011Fit.LeafMpa(predawn), 0.035);

    [Fact]
    public void Lategans_curves_are_refused_where_they_turn_over()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Lategan2011Fit.StemMpa(0.14));
        Assert.Throws<ArgumentOutOfRangeException>(() => Lategan2011Fit.LeafMpa(-0.4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Lategan2011Fit.LeafMpa(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeasureConversion.Convert(Leaf, Stem, -1));
    }
}
