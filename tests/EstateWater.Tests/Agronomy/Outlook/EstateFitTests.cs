using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class EstateFitTests
{
    private static readonly DateOnly First = new(2025, 10, 1);

    [Fact]
    public void A_fitted_block_comes_nearer_to_its_readings_than_an_unread_one()
    {
        var read = Evidence("read", [1.05, 1.15, 1.22, 1.31]);
        var tensions = Ahead(Fit(read));
        var unread = Ahead(Fit(Evidence("read", [])));
        Assert.Equal(1.33, Middle(tensions[0]), 0.08);
        Assert.True(Spread(tensions[0]) < 0.5 * Spread(unread[0]), $"{Spread(tensions[0])} against {Spread(unread[0])}");
    }

    [Fact]
    public void An_outlier_bends_the_fit_and_does_not_break_it()
    {
        var clean = Middle(Ahead(Fit(Evidence("block", [1.05, 1.12, 1.19, 1.24, 1.31])))[0]);
        var spoilt = Middle(Ahead(Fit(Evidence("block", [1.05, 1.12, 2.30, 1.24, 1.31])))[0]);
        Assert.InRange(spoilt - clean, -0.02, 0.15);
    }

    [Fact]
    public void More_water_never_raises_tension_and_drier_air_never_lowers_it()
    {
        var fitted = Fit(Evidence("block", [1.05, 1.15, 1.22, 1.31]));
        var dry = Ahead(fitted);
        var watered = Ahead(fitted, appliedMm: 12);
        var drierAir = Ahead(fitted, vpdKpa: 5);
        for (var day = 0; day < dry.Length; day++)
        {
            for (var member = 0; member < WeatherAhead.Members; member++)
            {
                Assert.True(watered[day][member] <= dry[day][member] + 1e-12);
                Assert.True(drierAir[day][member] >= dry[day][member] - 1e-12);
            }
        }
    }

    // Cloud lowers the tension of leaves: Myburgh 2018, p. 159. Before dawn it is dark anyway.
    [Fact]
    public void Cloud_lowers_tension_at_midday_and_says_nothing_of_it_before_dawn()
    {
        var fitted = Fit(Evidence("block", [1.05, 1.15, 1.22, 1.31]));
        var (clear, cloud) = (Ahead(fitted), Ahead(fitted, lightShare: 0.7));
        Assert.All(clear.Zip(cloud), day => Assert.All(day.First.Zip(day.Second), member => Assert.True(member.Second < member.First, $"{member.Second} under cloud, {member.First} without")));
        Assert.Equal(
            Ahead(fitted, measure: WaterPotentialMeasure.Predawn),
            Ahead(fitted, lightShare: 0.7, measure: WaterPotentialMeasure.Predawn));
    }

    [Fact]
    public void Numbers_do_not_depend_on_the_order_of_blocks()
    {
        var blocks = Enumerable.Range(1, 5).Select(i => Evidence($"B{i}", [1.0 + (0.02 * i), 1.1 + (0.02 * i), 1.2])).ToList();
        var cancellation = TestContext.Current.CancellationToken;
        var there = EstateFit.Fit(blocks, cancellation).Blocks;
        var back = EstateFit.Fit([.. blocks.AsEnumerable().Reverse()], cancellation).Blocks;
        for (var i = 0; i < blocks.Count; i++)
        {
            Assert.Equal(Ahead(there[i]), Ahead(back[blocks.Count - 1 - i]));
        }
    }

    // One block learned alone, with what the estate told, is what the last pass over the estate made of it.
    [Fact]
    public void A_block_learned_again_from_the_same_evidence_gives_the_same_numbers()
    {
        var blocks = Enumerable.Range(1, 5).Select(i => Evidence($"B{i}", [1.0 + (0.05 * i), 1.1 + (0.05 * i), 1.9])).ToList();
        var fit = EstateFit.Fit(blocks, TestContext.Current.CancellationToken);
        Assert.All(Enumerable.Range(0, 5), i => Assert.Equal(Ahead(fit.Blocks[i]), Ahead(fit.Refit(blocks[i]))));
        Assert.NotEqual(Ahead(Fit(blocks[2])), Ahead(fit.Refit(blocks[2])));
    }

    private static FittedBlock Fit(BlockEvidence evidence) => EstateFit.Fit([evidence], TestContext.Current.CancellationToken).Blocks[0];

    private static double[][] Ahead(FittedBlock block, double vpdKpa = 3, double appliedMm = 0, double lightShare = 1, WaterPotentialMeasure measure = WaterPotentialMeasure.Leaf)
    {
        double[][] Same(double value) => [.. Enumerable.Range(0, 8).Select(_ => Enumerable.Repeat(value, WeatherAhead.Members).ToArray())];
        var weather = new WeatherAhead(First.AddDays(block.Evidence.Season.Days), Same(7), Same(vpdKpa), Same(lightShare), Same(0));
        return new BlockOutlook(block, weather, measure, [.. Enumerable.Repeat(0.35, weather.Days)]).Tensions([appliedMm, 0, 0, appliedMm, 0, 0, 0, 0]);
    }

    // Weekly sets up to yesterday of a hundred-day season.
    private static BlockEvidence Evidence(string code, double[] tensionsMpa) => new()
    {
        Code = code,
        Declared = new BlockDeclaration(130, 0.11, 0.4, 0.97),
        Season = new SeasonForcing
        {
            FirstDay = First,
            Et0Mm = [.. Enumerable.Range(0, 100).Select(d => 4 + (0.03 * d))],
            VpdKpa = [.. Enumerable.Repeat(3.0, 100)],
            LightShare = [.. Enumerable.Repeat(1.0, 100)],
            RainMm = new double[100],
            AppliedMm = new double[100],
            ShadedFraction = [.. Enumerable.Range(0, 100).Select(d => Math.Min(0.35, 0.005 * d))],
        },
        Tensions = [.. tensionsMpa.Select((t, i) => new TensionEvidence(First.AddDays(99 - (7 * (tensionsMpa.Length - 1 - i))), WaterPotentialMeasure.Leaf, t, 0.03))],
    };

    private static double Middle(double[] values) => values.Order().ElementAt(values.Length / 2);

    private static double Spread(double[] values) => Math.Sqrt(values.Average(v => (v - values.Average()) * (v - values.Average())));
}
