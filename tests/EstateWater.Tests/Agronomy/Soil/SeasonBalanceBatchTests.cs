using CsCheck;
using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class SeasonBalanceBatchTests
{
    private static readonly Gen<double> Water = Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 80]);

    private static readonly Gen<BalanceInputs> Days =
        from eto in Gen.Double[0, 14]
        from coefficient in Gen.Double[0, 1.3]
        from rain in Water
        from irrigation in Water
        select new BalanceInputs(eto, coefficient, rain, irrigation);

    private static readonly Gen<(double Total, double Fraction, double Wetted, double Salt, double Factor, double Start)[]> Parameters =
        Gen.Select(Gen.Double[5, 400], Gen.Double[0.1, 0.8], Gen.OneOf(Gen.Const(1.0), Gen.Double[0.05, 1]), Gen.Double[0.3, 1], Gen.Double[0.5, 1.5], Gen.Double[0, 1]).Array[1, 11];

    private static RootZoneParameterSets Sets((double Total, double Fraction, double Wetted, double Salt, double Factor, double Start)[] parameters, bool adjust, WaterEventTiming timing)
    {
        var sets = new RootZoneParameterSets(parameters.Length, 100) { AdjustDepletionFraction = adjust, EventTiming = timing };
        for (var i = 0; i < parameters.Length; i++)
        {
            sets.TotalAvailableWaterMm[i] = parameters[i].Total;
            sets.DepletionFraction[i] = parameters[i].Fraction;
            sets.WettedFraction[i] = parameters[i].Wetted;
            sets.SaltStressCoefficient[i] = parameters[i].Salt;
            sets.CropCoefficientFactor[i] = parameters[i].Factor;
            sets.StartDepletionMm[i] = parameters[i].Start * parameters[i].Total;
        }

        return sets;
    }

    [Fact]
    public void Gives_the_daily_balance_of_every_set_and_day() =>
        Gen.Select(Parameters, Days.Array[1, 120], Gen.Bool, Gen.Enum<WaterEventTiming>()).Sample((parameters, days, adjust, timing) =>
        {
            var sets = Sets(parameters, adjust, timing);
            var result = SeasonBalanceBatch.Run([new BlockSeason(sets, days, [.. Enumerable.Range(0, days.Length)])])[0];
            for (var i = 0; i < parameters.Length; i++)
            {
                var settings = sets.Settings(i);
                var own = days.Select(d => d with { CropCoefficient = d.CropCoefficient * parameters[i].Factor });
                var expected = DailyBalance.Season(settings, settings.Even(sets.StartDepletionMm[i]), own);
                for (var d = 0; d < days.Length; d++)
                {
                    Assert.Equal(expected[d].End.WettedMm, result.WettedDepletionMm[d][i], 1e-9);
                    Assert.Equal(expected[d].End.OtherMm, result.OtherDepletionMm[d][i], 1e-9);
                }

                Assert.Equal(expected.Sum(d => d.ActualEtMm), result.ActualEtMm[i], 1e-9);
                Assert.Equal(expected.Sum(d => d.DeepPercolationMm), result.DeepPercolationMm[i], 1e-9);
            }
        });

    [Fact]
    public void Keeps_each_block_and_each_wanted_day_in_its_place()
    {
        BalanceInputs[] days = [.. Enumerable.Range(0, 30).Select(i => new BalanceInputs(5 + (0.1 * i), 0.6))];
        BlockSeason Block(double total) => new(new RootZoneParameterSets(3, total), days, [4, 29]);
        var results = SeasonBalanceBatch.Run([Block(80), Block(120), Block(200)]);
        foreach (var (result, total) in results.Zip([80.0, 120.0, 200.0]))
        {
            var expected = DailyBalance.Season(new RootZoneSettings { TotalAvailableWaterMm = total }, default, days);
            Assert.Equal(expected[4].End.TotalMm, result.WettedDepletionMm[0][2], 1e-9);
            Assert.Equal(expected[29].End.TotalMm, result.WettedDepletionMm[1][0], 1e-9);
        }
    }

    [Fact]
    public void Refuses_what_the_daily_balance_refuses()
    {
        BalanceInputs[] days = [new(5, 0.6), new(5, 0.6)];
        BlockSeason Block(Action<RootZoneParameterSets> change)
        {
            var sets = new RootZoneParameterSets(5, 100);
            change(sets);
            return new BlockSeason(sets, days, [1]);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonBalanceBatch.Run([Block(s => s.TotalAvailableWaterMm[4] = 0)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonBalanceBatch.Run([Block(s => s.WettedFraction[0] = double.NaN)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonBalanceBatch.Run([Block(s => s.StartDepletionMm[2] = 101)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonBalanceBatch.Run([Block(s => s.CropCoefficientFactor[2] = -1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonBalanceBatch.Run([Block(_ => { }) with { DaysKept = [2] }]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonBalanceBatch.Run([Block(_ => { }) with { Days = [new(5, double.NaN), days[0]] }]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RootZoneParameterSets(0, 100));
    }
}
