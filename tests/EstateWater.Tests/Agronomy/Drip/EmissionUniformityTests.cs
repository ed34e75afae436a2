using EstateWater.Agronomy.Drip;

namespace EstateWater.Tests.Drip;

public sealed class EmissionUniformityTests
{
    private static readonly double[] Emitters = [3.9, 4.1, 3.7, 4.0, 3.5, 4.2, 3.8, 3.6, 4.0, 3.9, 3.2, 4.1, 3.8, 3.9, 3.4, 4.0];

    // Sixteen catch cans of a published evaluation, printed as 82.13 %.
    [Fact]
    public void Low_quarter_of_sixteen_cans_is_the_published_one()
    {
        double[] cans = [12.0, 11.5, 10.8, 9.2, 12.3, 11.9, 10.1, 8.7, 12.1, 11.7, 10.5, 9.0, 12.2, 11.6, 10.3, 8.5];
        Assert.Equal(0.8213, EmissionUniformity.LowQuarter(cans), 0.00005);
    }

    // By hand on sixteen emitters: mean 3.81875, low quarter 3.425, SD 0.276209.
    [Fact]
    public void Three_measures_of_sixteen_emitters_are_the_hand_calculation()
    {
        Assert.Equal(0.896890, EmissionUniformity.LowQuarter(Emitters), 0.0000005);
        Assert.Equal(0.943331, EmissionUniformity.Christiansen(Emitters), 0.0000005);
        Assert.Equal(0.92767, EmissionUniformity.Statistical(Emitters), 0.000005);
    }

    // Six values: the quarter is one and a half, (1 + 0.5·2)∕1.5 over the mean of 3.5.
    [Fact]
    public void A_quarter_that_is_not_whole_counts_by_its_share() =>
        Assert.Equal(2 / 1.5 / 3.5, EmissionUniformity.LowQuarter([6, 5, 4, 3, 2, 1]), 1e-12);

    [Fact]
    public void Even_emitters_are_perfectly_uniform()
    {
        Assert.Equal(1, EmissionUniformity.LowQuarter([2, 2, 2, 2, 2]), 1e-12);
        Assert.Equal(1, EmissionUniformity.Christiansen([2, 2, 2, 2, 2]), 1e-12);
    }

    // Keller & Karmeli (1974) by hand: (1 − 1.27·0.05∕√2)·3.4∕3.8 = 0.85456.
    [Fact]
    public void Design_uniformity_is_the_hand_calculation() => Assert.Equal(0.85456, EmissionUniformity.Design(0.05, 2, 3.4, 3.8), 0.000005);

    [Theory]
    [InlineData(0.90, "excellent")]
    [InlineData(0.85, "good")]
    [InlineData(0.70, "fair")]
    [InlineData(0.65, "poor")]
    [InlineData(0.50, "unacceptable")]
    public void Is_said_in_words(double uniformity, string words) => Assert.Equal(words, EmissionUniformity.Words(uniformity));

    // By hand: k = 2∕√10 = 0.632456; x from (10 m, 2.00) and (15 m, 2.45).
    [Fact]
    public void Flow_follows_pressure()
    {
        var turbulent = EmitterCurve.Through(2, 10, 0.5);
        Assert.Equal(0.632456, turbulent.Coefficient, 0.0000005);
        Assert.Equal(1.788854, turbulent.FlowLPerH(8), 0.0000005);
        Assert.Equal(2.190890, turbulent.FlowLPerH(12), 0.0000005);
        var measured = EmitterCurve.Through((2.00, 10), (2.45, 15));
        Assert.Equal(0.50051, measured.Exponent, 0.000005);
        Assert.Equal(2.45, measured.FlowLPerH(15), 1e-12);
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => EmissionUniformity.LowQuarter([2, 2, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmissionUniformity.LowQuarter([2, 2, 2, -1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmissionUniformity.Christiansen([0, 0, 0, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmissionUniformity.Words(85));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterCurve.Through((2, 10), (2.4, 10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterCurve.Through(2, 10, 0.5).FlowLPerH(double.NaN));
    }
}
