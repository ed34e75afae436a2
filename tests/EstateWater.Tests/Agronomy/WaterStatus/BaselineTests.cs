using EstateWater.Agronomy.WaterStatus;
using static EstateWater.Agronomy.WaterStatus.WaterPotentialMeasure;

namespace EstateWater.Tests.WaterStatus;

public sealed class BaselineTests
{
    // Williams & Baeza (2007), quoted by Williams (2019): fully irrigated stem −0.37 MPa at 2 kPa and −0.57 MPa at 5 kPa.
    [Theory]
    [InlineData(2, 0.37)]
    [InlineData(5, 0.57)]
    public void Stem_of_a_watered_vine_is_the_published_one(double vpdKpa, double expected) =>
        Assert.Equal(expected, NonStressedBaseline.Stem.TensionMpa(vpdKpa), 0.005);

    // Myburgh (2018), p. 159: leaf falls about 0.08 MPa for each kPa over wet soil and 0.02 under deficit.
    [Fact]
    public void Leaf_moves_with_the_air_by_the_published_slopes()
    {
        Assert.Equal(0.08, NonStressedBaseline.Leaf.TensionMpa(4) - NonStressedBaseline.Leaf.TensionMpa(3), 1e-12);
        Assert.Equal(0.08, ReferenceVpd.SlopeMpaPerKpa(Leaf, 0.9), 1e-12);
        Assert.Equal(0.02, ReferenceVpd.SlopeMpaPerKpa(Leaf, 1.3), 1e-12);
    }

    // By hand: 0.95 − 0.067·1.5 = 0.8495.
    [Fact]
    public void A_reading_is_restated_by_its_slope() =>
        Assert.Equal(0.8495, ReferenceVpd.WithSlope(0.95, 4.5, 0.067), 1e-12);

    [Fact]
    public void Restating_keeps_the_order_of_readings_and_leaves_the_reference_day_alone()
    {
        double[] tensions = [.. Enumerable.Range(0, 200).Select(i => i * 0.01)];
        foreach (var measure in new[] { Leaf, Stem })
        {
            foreach (var vpd in new[] { 0.5, 1.5, 3, 5, 8 })
            {
                var restated = tensions.Select(t => ReferenceVpd.Restate(measure, t, vpd)).ToArray();
                Assert.Equal(restated.Order(), restated);
            }

            Assert.All(tensions, t => Assert.Equal(t, ReferenceVpd.Restate(measure, t, 3), 1e-12));
        }
    }

    [Fact]
    public void Refuses_predawn_and_impossible_air()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NonStressedBaseline.For(Predawn));
        Assert.Throws<ArgumentOutOfRangeException>(() => NonStressedBaseline.Leaf.TensionMpa(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReferenceVpd.Restate(Leaf, 1, double.NaN));
    }
}
