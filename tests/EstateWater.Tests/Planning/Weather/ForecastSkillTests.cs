using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Planning.Weather;

namespace EstateWater.Tests.Planning.Weather;

public sealed class ForecastSkillTests
{
    private static readonly DateOnly Today = new(2025, 1, 22);
    private const double UsualDayC = 28;
    private const double UsualNightC = 14;

    // By hand: with half of a departure left after eleven days, 121 / 170 of it is left after a week.
    [Fact]
    public void A_departure_fades_with_the_lead()
    {
        var skill = new ForecastSkill(11);

        Assert.Equal(1, skill.ShareLeft(0));
        Assert.Equal(121.0 / 170, skill.ShareLeft(7), 1e-12);
        Assert.Equal(0.5, skill.ShareLeft(11), 1e-12);
    }

    // Departures from normals of 28 and 14 °C: 32 °C by day is 4 above, 16 °C by night 2 above. At the same vapour.
    [Fact]
    public void A_forecast_keeps_what_is_expected_to_come_true()
    {
        var faded = new ForecastSkill(11).Faded(Issue(Today, tMaxC: 32), Usual());

        Assert.Equal(32, faded.Days[0].TMaxC);
        Assert.Equal(UsualDayC + (4 * 121.0 / 170), faded.Days[7].TMaxC, 1e-9);
        Assert.Equal(UsualNightC + (2 * 121.0 / 170), faded.Days[7].TMinC, 1e-9);
        Assert.Equal(
            30.0 / 100 * SaturationVapourPressure.AtKpa(32),
            faded.Days[7].RhMinPct!.Value / 100 * SaturationVapourPressure.AtKpa(faded.Days[7].TMaxC),
            1e-9);
    }

    [Fact]
    public void Days_as_hot_as_a_heat_spell_keep_all_of_it() =>
        Assert.All(new ForecastSkill(11).Faded(Issue(Today, tMaxC: HeatSpellRule.Default.ThresholdC), Usual()).Days, d => Assert.Equal(HeatSpellRule.Default.ThresholdC, d.TMaxC));

    [Fact]
    public void Without_other_years_nothing_fades()
    {
        var young = new OtherYears([.. Enumerable.Range(1, 30).Select(back => Measured(Today.AddDays(-back), UsualDayC))], Today, "home");

        Assert.All(new ForecastSkill(11).Faded(Issue(Today, tMaxC: 32), young).Days, d => Assert.Equal(32, d.TMaxC));
    }

    [Fact]
    public void Forecasts_that_always_came_true_are_believed_longer()
    {
        var (past, forecasts) = Held(comesTrue: true);

        Assert.InRange(ForecastSkill.Of(past, forecasts, new OtherYears(past, Today, "home")).HalfLeftDays, 14, 100);
    }

    [Fact]
    public void Forecasts_that_tell_nothing_are_believed_less()
    {
        var (past, forecasts) = Held(comesTrue: false);

        Assert.InRange(ForecastSkill.Of(past, forecasts, new OtherYears(past, Today, "home")).HalfLeftDays, 1, 7);
    }

    [Fact]
    public void Before_any_was_held_against_its_days_the_usual_holds() =>
        Assert.Equal(11, ForecastSkill.Of([], [], Usual()).HalfLeftDays);

    // This season's days swing by 4 °C about the normals of three other years, a week warm and a week cold.
    private static (List<DailyWeather> Past, List<IssuedForecast> Forecasts) Held(bool comesTrue)
    {
        static double Swing(DateOnly day) => day.DayNumber / 7 % 2 == 0 ? 4 : -4;
        var past = Years().ToList();
        past.AddRange(Enumerable.Range(1, 80).Select(back => Measured(Today.AddDays(-back), UsualDayC + Swing(Today.AddDays(-back)))));
        var forecasts = Enumerable.Range(2, 30).Select(i => Today.AddDays(-2 * i)).Select(day => new IssuedForecast(
            new DateTimeOffset(day.ToDateTime(new TimeOnly(5, 0)), TimeSpan.Zero),
            Member: null,
            [.. Enumerable.Range(0, 11).Select(lead => Measured(day.AddDays(lead), UsualDayC + (comesTrue ? Swing(day.AddDays(lead)) : ByTurns(day, lead))))])).ToList();
        return (past, forecasts);

        // Warm and cold by turns whatever comes.
        static double ByTurns(DateOnly day, int lead) => (day.DayNumber / 2 % 2 == 0 ? 4 : -4) * (lead > 0 ? 1 : 0);
    }

    private static OtherYears Usual() => new([.. Years()], Today, "home");

    private static IEnumerable<DailyWeather> Years() =>
        Enumerable.Range(1, 3).SelectMany(year => Enumerable.Range(-120, 150).Select(day => Measured(Today.AddYears(-year).AddDays(day), UsualDayC)));

    private static DailyWeather Measured(DateOnly day, double tMaxC) => new(day, tMaxC, UsualNightC, 90, 30);

    private static IssuedForecast Issue(DateOnly day, double tMaxC) => new(
        new DateTimeOffset(day.ToDateTime(new TimeOnly(5, 0)), TimeSpan.Zero),
        Member: null,
        [.. Enumerable.Range(0, 10).Select(lead => new DailyWeather(day.AddDays(lead), tMaxC, 16, 90, 30))]);
}
