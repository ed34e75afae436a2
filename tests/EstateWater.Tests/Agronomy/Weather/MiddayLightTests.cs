using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Agronomy.Weather;

public sealed class MiddayLightTests
{
    // Rio de Janeiro in the middle of May, as in FAO-56 Example 10: R_s 14.5 and R_so 18.8 MJ/m², 10.9 h of daylight.
    private static readonly StationSite Rio = new(-22.90, -43.17, 0);
    private static readonly DateOnly May = new(2025, 5, 15);

    // By hand from the example's numbers: 580 and 752 W/m² at noon, (1 − exp(−580/250)) / (1 − exp(−752/250)).
    [Fact]
    public void A_day_with_some_cloud_opens_stomata_as_far_as_computed_by_hand() =>
        Assert.Equal(0.949, MiddayLight.Share(Day(14.5), Rio), 0.003);

    [Fact]
    public void A_clear_day_counts_in_full_and_so_does_one_whose_light_is_not_known()
    {
        Assert.Equal(1, MiddayLight.Share(Day(18.9), Rio));
        Assert.Equal(1, MiddayLight.Share(Day(25), Rio));
        Assert.Equal(1, MiddayLight.Share(Day(null), Rio));
    }

    [Fact]
    public void The_darker_the_day_the_less_it_opens_them()
    {
        var shares = Enumerable.Range(0, 19).Select(mj => MiddayLight.Share(Day(mj), Rio)).ToList();
        Assert.Equal(0, shares[0]);
        Assert.All(shares.Zip(shares.Skip(1)), pair => Assert.True(pair.First < pair.Second, $"{pair.First} then {pair.Second}"));
    }

    [Fact]
    public void Radiation_that_cannot_be_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MiddayLight.Share(Day(-1), Rio));

    private static DailyWeather Day(double? solarMjPerM2) => new(May, 28, 20, SolarMjPerM2: solarMjPerM2);
}
