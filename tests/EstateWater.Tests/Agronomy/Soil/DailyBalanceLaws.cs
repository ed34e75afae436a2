using System.Globalization;
using CsCheck;
using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

/// <summary>What holds for every root zone and every season.</summary>
public sealed class DailyBalanceLaws
{
    private static readonly Gen<RootZoneSettings> RootZones =
        from total in Gen.Double[5, 400]
        from fraction in Gen.Double[0.1, 0.8]
        from adjust in Gen.Bool
        from wetted in Gen.OneOf(Gen.Const(1.0), Gen.Double[0.05, 1])
        from timing in Gen.Enum<WaterEventTiming>()
        from salt in Gen.OneOf(Gen.Const(1.0), Gen.Double[0.3, 1])
        select new RootZoneSettings
        {
            TotalAvailableWaterMm = total,
            DepletionFraction = fraction,
            AdjustDepletionFraction = adjust,
            WettedFraction = wetted,
            EventTiming = timing,
            SaltStressCoefficient = salt,
        };

    private static readonly Gen<double> Water = Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 80]);

    private static readonly Gen<BalanceInputs> Days =
        from eto in Gen.Double[0, 14]
        from coefficient in Gen.Double[0, 1.3]
        from rain in Water
        from irrigation in Water
        select new BalanceInputs(eto, coefficient, rain, irrigation);

    private static readonly Gen<(RootZoneSettings RootZone, double Start, BalanceInputs[] Days)> Seasons =
        Gen.Select(RootZones, Gen.Double[0, 1], Days.Array[1, 150]);

    [Fact]
    public void Water_is_conserved_over_any_season() =>
        Seasons.Sample(season =>
        {
            var start = season.RootZone.Even(season.Start * season.RootZone.TotalAvailableWaterMm);
            var days = DailyBalance.Season(season.RootZone, start, season.Days);
            var into = season.Days.Sum(d => d.RainMm + d.IrrigationMm);
            var outOf = days.Sum(d => d.ActualEtMm + d.DeepPercolationMm);
            return Math.Abs(days[^1].End.TotalMm - (start.TotalMm + outOf - into)) < 1e-9;
        });

    [Fact]
    public void Depletion_and_stress_stay_within_their_bounds() =>
        Seasons.Sample(season =>
        {
            var wettedTotal = season.RootZone.TotalAvailableWaterMm * season.RootZone.WettedFraction;
            var days = DailyBalance.Season(season.RootZone, season.RootZone.Even(season.Start * season.RootZone.TotalAvailableWaterMm), season.Days);
            return days.All(d =>
                d.End.WettedMm >= 0 && d.End.WettedMm <= wettedTotal
                && d.End.OtherMm >= 0 && d.End.OtherMm <= season.RootZone.TotalAvailableWaterMm - wettedTotal
                && d.StressCoefficient is >= 0 and <= 1
                && d.ActualEtMm >= 0 && d.ActualEtMm <= d.CropEtMm + 1e-12 // a rounding
                && d.DeepPercolationMm >= 0);
        });

    [Fact]
    public void More_water_never_raises_depletion() =>
        Gen.Select(Seasons, Gen.Int[0, 149], Gen.Double[0, 50]).Sample((season, day, more) =>
        {
            var start = season.RootZone.Even(season.Start * season.RootZone.TotalAvailableWaterMm);
            var wetter = season.Days.Select((d, i) => i == day % season.Days.Length ? d with { IrrigationMm = d.IrrigationMm + more } : d);
            var before = DailyBalance.Season(season.RootZone, start, season.Days);
            var after = DailyBalance.Season(season.RootZone, start, wetter);
            return before.Zip(after).All(d => d.Second.End.TotalMm <= d.First.End.TotalMm + 1e-9);
        });

    [Fact]
    public void The_culture_does_not_matter()
    {
        var here = CultureInfo.CurrentCulture;
        var rootZone = new RootZoneSettings { TotalAvailableWaterMm = 120, WettedFraction = 0.4 };
        var days = Enumerable.Range(0, 60).Select(i => new BalanceInputs(5 + (0.03 * i), 0.6, RainMm: i % 17 == 0 ? 9.5 : 0, IrrigationMm: i % 7 == 0 ? 8.25 : 0)).ToArray();
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            var expected = DailyBalance.Season(rootZone, rootZone.Even(30), days);
            CultureInfo.CurrentCulture = new CultureInfo("tr-TR");
            Assert.Equal(expected, DailyBalance.Season(rootZone, rootZone.Even(30), days));
        }
        finally
        {
            CultureInfo.CurrentCulture = here;
        }
    }
}
