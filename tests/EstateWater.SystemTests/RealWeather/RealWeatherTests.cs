using System.Globalization;
using System.Text.Json;
using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.Weather;

namespace EstateWater.SystemTests.RealWeather;

/// <summary>
/// Four real years through the program: in by its import, out of its database, into its formulas. No sums of this record are
/// published: those below were computed independently of this program, in another language, from the published formulas.
/// </summary>
public sealed class RealWeatherTests(SeattleEstate estate) : IClassFixture<SeattleEstate>
{
    private const double Latitude = 47.45;
    private static readonly StationSite Site = new(Latitude, -122.31, 130, 10);
    private readonly List<DailyWeather> days =
    [
        .. estate.Contents.Weather.Select(d => new DailyWeather(d.Date, d.TMaxC, d.TMinC, d.RhMaxPct, d.RhMinPct, d.WindMPerS, d.SolarMjPerM2, d.RainMm)),
    ];

    [Fact]
    public void Every_day_comes_back_with_what_was_measured_and_nothing_else()
    {
        Assert.Equal(1461, days.Count);
        Assert.Equal((new DateOnly(2012, 1, 1), new DateOnly(2015, 12, 31)), (days[0].Date, days[^1].Date));
        Assert.All(days, d => Assert.True(d is { RhMaxPct: null, RhMinPct: null, SolarMjPerM2: null, WindMPerS: not null, RainMm: not null }));
    }

    [Theory]
    [InlineData(2012, 1226.0)]
    [InlineData(2013, 828.0)]
    [InlineData(2014, 1232.8)]
    [InlineData(2015, 1139.2)]
    public void Rain(int year, double mm) => Assert.Equal(mm, Year(year).Sum(d => d.RainMm!.Value), 0.05);

    // Eq. 6 with the rules for missing humidity (Eq. 48) and radiation (Eq. 50, k_Rs 0.16); wind from 10 m by Eq. 47, at least 0.5 m/s.
    [Theory]
    [InlineData(2012, 762.380)]
    [InlineData(2013, 770.803)]
    [InlineData(2014, 826.634)]
    [InlineData(2015, 852.665)]
    public void Reference_evapotranspiration_with_humidity_and_radiation_estimated_and_wind_measured(int year, double mm)
    {
        var results = Year(year).Select(d => ReferenceEvapotranspiration.Daily(d, Site)).ToList();

        Assert.All(results, r => Assert.Equal(
            (InputOrigin.Estimated, InputOrigin.Estimated, InputOrigin.Measured), (r.Humidity, r.Radiation, r.Wind)));
        // The slope's constants are printed rounded: 0.01 mm a year is far below any use.
        Assert.Equal(mm, results.Sum(r => r.Mm), 0.01);
    }

    [Theory]
    [InlineData(2012, 799.1)]
    [InlineData(2013, 832.0)]
    [InlineData(2014, 866.2)]
    [InlineData(2015, 898.8)]
    public void Hargreaves_sum(int year, double mm) => Assert.Equal(
        mm,
        Year(year).Sum(d => Hargreaves.DailyMm(d.TMinC, d.TMaxC, ExtraterrestrialRadiation.DailyMjPerM2(Latitude, d.Date.DayOfYear))),
        0.05);

    // Sums of tenths and halves of tenths, so exact as written.
    [Theory]
    [InlineData(2012, 1111.9, 1473.075)]
    [InlineData(2013, 1333.45, 1727.05)]
    [InlineData(2014, 1439.7, 1770.1)]
    [InlineData(2015, 1477.7, 1833.15)]
    public void Heat_sums(int year, double winkler, double huglinWithoutDayLength)
    {
        Assert.Equal(winkler, WinklerIndex.Of(days, year, Latitude).DegreeDays, 0.001);
        Assert.Equal(0, WinklerIndex.Of(days, year, Latitude).MissingDays);
        Assert.Equal(huglinWithoutDayLength, HuglinIndex.Of(days, year, Latitude, coefficient: 1).DegreeDays, 0.001);
        Assert.Equal(1.05 * huglinWithoutDayLength, HuglinIndex.Of(days, year, Latitude).DegreeDays, 0.001);
    }

    // The sum starts on the 60th day, as printed: 29 February in 2012.
    [Theory]
    [InlineData(2012, "2012-06-22", 1222.05, "2012-09-02", 2551.60)]
    [InlineData(2013, "2013-06-10", 1222.70, "2013-08-17", 2564.55)]
    [InlineData(2014, "2014-06-09", 1234.05, "2014-08-16", 2566.95)]
    [InlineData(2015, "2015-06-07", 1236.00, "2015-08-08", 2550.35)]
    public void Flowering_and_veraison_of_Chardonnay(int year, string flowering, double floweringCd, string veraison, double veraisonCd)
    {
        var needs = VarietyHeatNeeds.Of(estate.Contents.Blocks[0].Variety);
        var means = days.ToDictionary(d => d.Date, d => (d.TMaxC + d.TMinC) / 2);
        var start = new DateOnly(year, 1, 1).AddDays(59);

        Check(flowering, floweringCd, GrapevineFloweringVeraison.Reached(means, start, needs.FloweringCd));
        Check(veraison, veraisonCd, GrapevineFloweringVeraison.Reached(means, start, needs.VeraisonCd));
        Assert.Equal(DateTime.IsLeapYear(year) ? start.AddDays(1) : start, GrapevineFloweringVeraison.StartOfSum(year, Latitude));

        static void Check(string date, double sumCd, ThermalEvent? reached)
        {
            Assert.Equal(DateOnly.Parse(date, CultureInfo.InvariantCulture), reached?.Date);
            Assert.Equal(sumCd, reached!.SumCd, 0.001);
        }
    }

    [Theory]
    [InlineData(2012, 8, 0, 34.4, "2012-08-16")]
    [InlineData(2013, 15, 0, 33.9, "2013-06-30", "2013-09-11")]
    [InlineData(2014, 17, 1, 35.6, "2014-08-11")]
    [InlineData(2015, 23, 1, 35.0, "2015-07-19")]
    public void Hot_days(int year, int from30, int from35, double hottestC, params string[] hottestDays)
    {
        Assert.Equal((from30, from35), (Year(year).Count(d => d.TMaxC >= 30), Year(year).Count(d => d.TMaxC >= 35)));
        Assert.Equal(hottestC, Year(year).Max(d => d.TMaxC));
        Assert.Equal(hottestDays, Year(year).Where(d => d.TMaxC >= hottestC).Select(d => d.Date.ToString("O", CultureInfo.InvariantCulture)));
    }

    // By hand from the record: every run of three or more days at 30 °C or above.
    [Theory]
    [InlineData(2012, "08-15 to 08-17, 34.4")]
    [InlineData(2013, "06-28 to 07-01, 33.9", "07-23 to 07-26, 31.1", "08-05 to 08-07, 31.1")]
    [InlineData(2014)]
    [InlineData(2015, "06-25 to 06-27, 33.3", "06-30 to 07-05, 33.9", "07-29 to 08-02, 34.4")]
    public void Heat_spells(int year, params string[] spells)
    {
        var found = HeatSpells.Find(Year(year).Select(d => (d.Date, (double?)d.TMaxC)), new HeatSpellRule { ThresholdC = 30, Percentile = null });
        Assert.Equal(spells, found.Select(s => FormattableString.Invariant($"{s.From:MM-dd} to {s.To:MM-dd}, {s.PeakTMaxC:0.0}")));
    }

    [Fact]
    public async Task A_plan_without_readings_or_forecast_stands_on_the_balance_and_other_years()
    {
        var plan = await estate.RunAsync("plan", "--data", estate.Folder, "--as-of", "2015-07-06T06:00:00-07:00");

        Assert.True(plan.ExitCode == 0, plan.Errors);
        using var document = JsonDocument.Parse(plan.Output);
        var block = Assert.Single(document.RootElement.GetProperty("blocks").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, block.GetProperty("latest").ValueKind);
        Assert.Contains("not read yet", block.GetProperty("reason").GetString(), StringComparison.Ordinal);
        var outlook = block.GetProperty("outlook").EnumerateArray().ToList();
        Assert.Equal(11, outlook.Count);
        Assert.All(outlook.Select(day => day.GetProperty("unwatered_bar")), band => Assert.True(Bar(band, "p10") < Bar(band, "p90")));

        // The middle of an unwatered block in a dry July climbs.
        Assert.True(Bar(outlook[^1].GetProperty("unwatered_bar"), "p50") > Bar(outlook[0].GetProperty("unwatered_bar"), "p50"));

        static double Bar(JsonElement band, string name) => band.GetProperty(name).GetDouble();
    }

    private IEnumerable<DailyWeather> Year(int year) => days.Where(d => d.Date.Year == year);
}
