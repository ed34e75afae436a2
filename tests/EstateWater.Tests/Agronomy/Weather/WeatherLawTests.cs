using System.Globalization;
using CsCheck;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class WeatherLawTests
{
    private static readonly Gen<DailyWeather> AnyDay =
        from tMin in Gen.Double[-15, 30]
        from range in Gen.Double[0, 25]
        from rhMin in Gen.Double[0, 100]
        from rhAbove in Gen.Double[0, 1]
        from wind in Gen.Double[0, 15]
        from solar in Gen.Double[0, 35]
        from day in Gen.Int[1, 365]
        from missing in Gen.Int[0, 15]
        select new DailyWeather(
            new DateOnly(2025, 1, 1).AddDays(day - 1),
            tMin + range,
            tMin,
            (missing & 1) != 0 ? null : rhMin + (rhAbove * (100 - rhMin)),
            (missing & 2) != 0 ? null : rhMin,
            (missing & 4) != 0 ? null : wind,
            (missing & 8) != 0 ? null : solar);

    private static readonly Gen<StationSite> AnySite = Gen.Select(
        Gen.Double[-55, 55], Gen.Double[-180, 180], Gen.Double[0, 2500], Gen.Double[2, 10], (lat, lon, z, h) => new StationSite(lat, lon, z, h));

    [Fact]
    public void Evapotranspiration_and_deficits_are_never_negative() =>
        Gen.Select(AnyDay, AnySite).Sample((day, site) =>
        {
            var et = ReferenceEvapotranspiration.Daily(day, site).Mm;
            return et is >= 0 and < 30
                && VapourPressureDeficit.DailyKpa(day) >= 0
                && VapourPressureDeficit.NearSolarNoonKpa(day) >= 0;
        });

    [Fact]
    public void More_net_radiation_or_drier_air_never_means_less_evapotranspiration() =>
        Gen.Select(Gen.Double[-5, 45], Gen.Double[-5, 20], Gen.Double[0, 10], Gen.Double[0, 5], Gen.Double[0, 5]).Sample((t, net, wind, deficit, more) =>
        {
            var et = PenmanMonteith.DailyMm(t, net, 0, 0.066, wind, deficit);
            return PenmanMonteith.DailyMm(t, net + more, 0, 0.066, wind, deficit) >= et
                && PenmanMonteith.DailyMm(t, net, 0, 0.066, wind, deficit + more) >= et;
        });

    [Fact]
    public void Daily_saturation_is_never_below_the_value_at_the_mean_temperature() =>
        Gen.Select(Gen.Double[-10, 30], Gen.Double[0, 25]).Sample((tMin, range) =>
            SaturationVapourPressure.DailyMeanKpa(tMin, tMin + range) + 1e-12 >= SaturationVapourPressure.AtKpa(tMin + (range / 2)));

    [Fact]
    public void Results_and_messages_do_not_depend_on_the_culture()
    {
        var day = new DailyWeather(new DateOnly(2025, 7, 15), 36.5, 15.25, 80.5, 20.5, 2.5, 27.5);
        var site = new StationSite(38.5, -122.5, 60.5);
        var (et, message) = Under("en-US");

        Assert.Equal((et, message), Under("es-ES"));
        Assert.Equal((et, message), Under("ar-SA"));

        (double Mm, string Message) Under(string culture)
        {
            var before = CultureInfo.CurrentCulture;
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                var error = Assert.Throws<ArgumentOutOfRangeException>(() => WindSpeed.At2MMPerS(1, 0));
                return (ReferenceEvapotranspiration.Daily(day, site).Mm, error.Message.Split('\n')[0]);
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        }
    }

    public static TheoryData<DailyWeather, string> WrongDays => new()
    {
        { new DailyWeather(new DateOnly(2025, 7, 15), double.NaN, 15), "tMaxC" },
        { new DailyWeather(new DateOnly(2025, 7, 15), 14, 15), "tMaxC" },
        { new DailyWeather(new DateOnly(2025, 7, 15), 30, -61), "tMinC" },
        { new DailyWeather(new DateOnly(2025, 7, 15), 30, 15, 101, 20), "rhMaxPct" },
        { new DailyWeather(new DateOnly(2025, 7, 15), 30, 15, 50, 60), "rhMinPct" },
        { new DailyWeather(new DateOnly(2025, 7, 15), 30, 15, WindMPerS: -1), "windMPerS" },
        { new DailyWeather(new DateOnly(2025, 7, 15), 30, 15, SolarMjPerM2: 61), "solarMjPerM2" },
    };

    [Theory]
    [MemberData(nameof(WrongDays))]
    public void A_wrong_day_is_refused_by_name(DailyWeather day, string name)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => ReferenceEvapotranspiration.Daily(day, new StationSite(45, 5, 200)));

        Assert.Equal(name, error.ParamName);
        Assert.Contains("Expected", error.Message, StringComparison.Ordinal);
    }
}
