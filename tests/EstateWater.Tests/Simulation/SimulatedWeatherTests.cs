using EstateWater.Simulation.Numbers;
using EstateWater.Simulation.Weather;

namespace EstateWater.Tests.Simulation;

/// <summary>Weather has a dry summer on either side of the equator, persists, and is forecast worse the further ahead.</summary>
public sealed class SimulatedWeatherTests
{
    [Theory]
    [InlineData(-34, 1, 7)]
    [InlineData(37, 7, 1)]
    public void Rain_falls_mainly_in_winter(double latitude, int summerMonth, int winterMonth)
    {
        var days = TenYears(latitude);
        double Rain(int month) => days.Where(d => d.Date.Month == month).Sum(d => d.RainMm);
        Assert.True(Rain(winterMonth) > 5 * Rain(summerMonth), $"{Rain(winterMonth):0} and {Rain(summerMonth):0} mm");
        double Warmth(int month) => days.Where(d => d.Date.Month == month).Average(d => d.TMaxC);
        Assert.True(Warmth(summerMonth) > Warmth(winterMonth) + 10);
    }

    [Fact]
    public void A_warm_day_is_followed_by_a_warm_day()
    {
        var summer = TenYears(-34).Where(d => d.Date.Month is 1).ToList();
        var mean = summer.Average(d => d.TMaxC);
        var pairs = summer.Zip(summer.Skip(1)).Where(p => p.Second.Date == p.First.Date.AddDays(1)).ToList();
        var correlation = pairs.Average(p => (p.First.TMaxC - mean) * (p.Second.TMaxC - mean)) / summer.Average(d => (d.TMaxC - mean) * (d.TMaxC - mean));
        Assert.InRange(correlation, 0.35, 0.85);
    }

    [Fact]
    public void Heat_spells_of_three_days_happen_in_most_years()
    {
        var days = TenYears(-34);
        var spells = Enumerable.Range(2, days.Count - 2).Count(i => days[i].TMaxC >= 37 && days[i - 1].TMaxC >= 37 && days[i - 2].TMaxC >= 37);
        Assert.InRange(spells, 8, 120);
    }

    [Fact]
    public void Forecast_errors_grow_with_the_lead_and_the_spread_of_members_covers_them()
    {
        var (site, climate) = (Place(-34), new Climate());
        var days = TenYears(-34);
        var office = new ForecastOffice(site, climate, 11);
        var errors = new double[3];
        int[] leads = [1, 5, 9];
        var covered = 0;
        const int Issues = 150;
        for (var issue = 0; issue < Issues; issue++)
        {
            var truth = days.Skip(issue * 20).Take(12).ToList();
            var issued = office.Issue(truth, site.At(truth[0].Date, 5), 20, "home");
            for (var i = 0; i < leads.Length; i++)
            {
                errors[i] += Math.Abs(issued[0].Days[leads[i]].TMaxC - truth[leads[i]].TMaxC) / Issues;
            }

            var members = issued.Skip(1).Select(m => m.Days[5].TMaxC).Order().ToList();
            covered += truth[5].TMaxC >= members[1] && truth[5].TMaxC <= members[^2] ? 1 : 0;
        }

        Assert.True(errors[0] < errors[1] && errors[1] < errors[2], string.Join(" ", errors));
        Assert.InRange(errors[0], 0.8, 1.8);
        Assert.InRange((double)covered / Issues, 0.65, 0.95);
    }

    [Fact]
    public void Dice_are_even_and_normal_and_streams_do_not_share()
    {
        var dice = Dice.Of(1, "test");
        var normals = Enumerable.Range(0, 20000).Select(_ => dice.Normal()).ToList();
        Assert.Equal(0, normals.Average(), 0.03);
        Assert.Equal(1, normals.Average(n => n * n), 0.05);
        Assert.NotEqual(Dice.Of(1, "a").Uniform(), Dice.Of(1, "b").Uniform());
        Assert.Equal(Dice.Of(1, "a", 2).Uniform(), Dice.Of(1, "a", 2).Uniform());
    }

    private static IReadOnlyList<DayWeather> TenYears(double latitude) =>
        new WeatherGenerator(Place(latitude), new Climate(), 11).Draw(new DateOnly(2010, 1, 1), new DateOnly(2019, 12, 31), []);

    private static Site Place(double latitude) => new(latitude, 139, 100, TimeZoneInfo.Utc);
}
