using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class DualCoefficientTests
{
    // FAO-56 (Allen et al. 1998), Example 31: bare loam, TEW 20, REW 9, ETo 4.5, Kcmax 1.20, Kcb 0.15, all ground bare and wetted.
    [Fact]
    public void Bare_ground_dries_as_in_example_31()
    {
        double[] expected = [4.73, 9.45, 13.98, 16.57, 18.04, 18.88, 19.36, 19.64, 19.79, 19.88];
        var layer = new EvaporationLayer { TotalEvaporableMm = 20, ReadilyEvaporableMm = 9 };
        var ground = new EvaporatingGround(0.15, 1.20, Cover: 0, Wetted: 1);
        double depletion = 0;
        foreach (var printed in expected)
        {
            depletion = layer.Step(depletion, ground, 4.5).EndDepletionMm;
            Assert.Equal(printed, depletion, 0.005 + 1e-9);
        }
    }

    // FAO-56, Example 32: Kcb 0.9, 3 m/s, 20 %, 1 m high, sprinkled: Kcmax 1.30, fc 0.53, few 0.47, Ke 0.40.
    // Examples 33 and 34: furrows, few 0.30, Ke 0.39; drip, few 0.193, Ke 0.25. Fractions are printed to two decimals.
    [Theory]
    [InlineData(1.0, false, 0.47, 0.40)]
    [InlineData(0.3, false, 0.30, 0.39)]
    [InlineData(0.3, true, 0.193, 0.25)]
    public void Evaporation_follows_the_wetted_ground_as_in_examples_32_to_34(double wetted, bool isDrip, double few, double evaporation)
    {
        var largest = DualCoefficient.Largest(0.9, 3, 20, 1);
        Assert.Equal(1.30, largest, 0.005);
        var cover = DualCoefficient.Cover(0.9, largest, 1);
        Assert.Equal(0.53, cover, 0.005);
        var share = DualCoefficient.BareAndWetted(cover, wetted, isDrip);
        Assert.Equal(few, share, 0.005);
        Assert.Equal(evaporation, DualCoefficient.Evaporation(1, largest, 0.9, share), 0.005);
    }

    // FAO-56, Example 35, recomputed without rounding from the book's equations: the print has Kr, Ke and Kc wrong on some days.
    [Fact]
    public void Ten_days_follow_example_35_recomputed()
    {
        double[] eto = [4.5, 5.0, 3.9, 4.2, 4.8, 2.7, 5.8, 5.1, 4.7, 5.2];
        double[] reduction = [1, 1, 0.724, 0.410, 0.221, 0.706, 0.522, 0.231, 0.118, 0.066];
        double[] coefficient = [1.212, 1.212, 0.966, 0.694, 0.536, 0.960, 0.808, 0.571, 0.486, 0.453];
        double[] cropEt = [5.45, 6.06, 3.77, 2.91, 2.57, 2.59, 4.68, 2.91, 2.29, 2.36];
        double[] end = [5.13, 10.76, 13.90, 15.79, 16.94, 12.78, 15.69, 16.82, 17.34, 17.67];
        var layer = new EvaporationLayer { TotalEvaporableMm = 18, ReadilyEvaporableMm = 8 };
        double depletion = 18;
        for (var i = 0; i < eto.Length; i++)
        {
            var basal = 0.30 + (0.10 * i / 9);
            var ground = new EvaporatingGround(basal, 1.2120, Cover: 0.08 + (0.06 * i / 9), Wetted: i < 5 ? 0.8 : 1);
            var day = layer.Step(depletion, ground, eto[i], rainMm: i == 5 ? 6 : 0, irrigationMm: i == 0 ? 40 : 0);
            // The largest coefficient is known to four decimals only, which is worth a little more than the last half digit here.
            Assert.Equal(reduction[i], day.Reduction, 0.00055);
            Assert.Equal(coefficient[i], day.EvaporationCoefficient + basal, 0.00055);
            Assert.Equal(cropEt[i], day.CropEtMm, 0.0055);
            Assert.Equal(end[i], day.EndDepletionMm, 0.0055);
            depletion = day.EndDepletionMm;
        }
    }

    // Eq. 77–79: what comes in leaves by evaporation, by percolation, or stays.
    [Fact]
    public void Top_soil_keeps_its_water()
    {
        var layer = new EvaporationLayer { TotalEvaporableMm = 18, ReadilyEvaporableMm = 8 };
        var ground = new EvaporatingGround(0.4, 1.2, 0.3, 0.4, IsDrip: true);
        var day = layer.Step(12, ground, 7, rainMm: 2, irrigationMm: 8);
        var evaporated = day.EvaporationCoefficient * 7 / DualCoefficient.BareAndWetted(0.3, 0.4, true);
        Assert.Equal(day.EndDepletionMm, 12 - 2 - (8 / 0.4) + evaporated + day.PercolationMm, 1e-9);
    }

    // FAO-56 Eq. 73 by hand: 1000(0.28 − 0.06)·0.1 = 22 mm.
    [Fact]
    public void Evaporable_water_follows_the_soil() => Assert.Equal(22, EvaporationLayer.TotalMm(0.28, 0.12, 0.1), 1e-9);

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        var layer = new EvaporationLayer { TotalEvaporableMm = 18, ReadilyEvaporableMm = 8 };
        Assert.Throws<ArgumentOutOfRangeException>(() => layer.Reduction(19));
        Assert.Throws<ArgumentOutOfRangeException>(() => layer.Step(5, new EvaporatingGround(0.4, 1.2, 0.3, 0), 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => layer.Step(5, new EvaporatingGround(1.4, 1.2, 0.3, 1), 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => DualCoefficient.Cover(0.4, 0.1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => EvaporationLayer.TotalMm(0.1, 0.2, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => (layer with { ReadilyEvaporableMm = 20 }).Reduction(5));
    }
}
