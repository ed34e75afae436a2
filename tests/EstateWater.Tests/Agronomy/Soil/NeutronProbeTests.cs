using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class NeutronProbeTests
{
    private static readonly double[] Standards = [10020, 9932, 10105, 9878, 10061, 9990, 10143, 9921, 9969, 10087];

    // Poisson counts: 0.5·√(1∕8000 + 1∕16000) = 0.0068465; with slope 0.25, 0.0017116. By hand.
    [Fact]
    public void Counting_error_is_that_of_poisson_counts()
    {
        Assert.Equal(0.5, NeutronProbe.CountRatio(8000, 16000));
        var error = NeutronProbe.CountRatioError(8000, 16000);
        Assert.Equal(0.0068465, error, 0.00000005);
        Assert.Equal(0.0017116, new ProbeCalibrationLine(-0.02, 0.25).WaterContentError(error), 0.00000005);
        Assert.Equal(error / 4, NeutronProbe.CountRatioError(8000, 16000, prescale: 16), 1e-15);
    }

    // θ = −0.020 + 0.25·CR, by hand.
    [Theory]
    [InlineData(0.55, 0.1175)]
    [InlineData(0.86, 0.195)]
    [InlineData(1.06, 0.245)]
    public void Calibration_is_a_straight_line(double ratio, double expected) =>
        Assert.Equal(expected, new ProbeCalibrationLine(-0.020, 0.25).WaterContent(ratio), 1e-12);

    [Fact]
    public void Calibration_is_found_again_from_its_own_points()
    {
        double[] ratios = [0.55, 0.70, 0.86, 0.94, 1.02, 1.06];
        var fit = NeutronProbe.Calibrate(ratios, [.. ratios.Select(r => -0.020 + (0.25 * r))]);
        Assert.Equal(-0.020, fit.Line.Intercept, 1e-12);
        Assert.Equal(0.25, fit.Line.Slope, 1e-12);
        Assert.Equal(0, fit.ResidualStandardDeviation, 1e-12);
        Assert.Equal(6, fit.Points);
    }

    // 95 % limits of s∕√m from tabulated chi-square: √(χ²∕(n − 1)).
    [Theory]
    [InlineData(10, 0.548, 1.454)]
    [InlineData(20, 0.685, 1.315)]
    [InlineData(32, 0.752, 1.247)]
    public void Ratio_limits_are_those_of_chi_square(int count, double lowest, double highest)
    {
        var limits = StandardCountTest.RatioLimits(count);
        Assert.Equal(lowest, limits.Lowest, 0.0005);
        Assert.Equal(highest, limits.Highest, 0.0005);
    }

    // Ten counts worked out by hand: mean 10010.6, s 87.4645, √m 100.0530, ratio 0.87418, chi-square 6.87775.
    [Fact]
    public void Ten_good_counts_pass()
    {
        var test = StandardCountTest.Of(Standards);
        Assert.Equal(10010.6, test.Mean, 1e-9);
        Assert.Equal(87.4645, test.StandardDeviation, 0.00005);
        Assert.Equal(0.87418, test.Ratio, 0.000005);
        Assert.Equal(6.87775, test.ChiSquare, 0.000005);
        Assert.True(test.Passes);
    }

    [Fact]
    public void A_scaled_display_gives_the_same_ratio_once_its_scale_is_known()
    {
        double[] shown = [.. Standards.Select(c => c / 16)];
        Assert.Equal(StandardCountTest.Of(Standards).Ratio, StandardCountTest.Of(shown, prescale: 16).Ratio, 1e-12);
        Assert.False(StandardCountTest.Of(shown).Passes);
    }

    [Fact]
    public void A_drifting_gauge_fails() => Assert.False(StandardCountTest.Of([10000, 10150, 10300, 10450, 10600, 10750]).Passes);

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NeutronProbe.CountRatio(8000, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => NeutronProbe.CountRatio(-1, 16000));
        Assert.Throws<ArgumentOutOfRangeException>(() => NeutronProbe.Calibrate([0.5, 0.6, 0.7], [0.1, 0.2, 1.2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => NeutronProbe.Calibrate([0.5, 0.6], [0.1, 0.2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => StandardCountTest.Of([10000, 0, 10000]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ProbeCalibrationLine(0, 1).WaterContent(double.NaN));
    }
}
