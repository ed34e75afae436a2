using EstateWater.Agronomy.Sun;

namespace EstateWater.Tests.Sun;

public sealed class SamplingWindowTests
{
    [Theory]
    [InlineData("America/Los_Angeles", 38.5, -122.5, 2025, 3, 8, +60)]
    [InlineData("America/Los_Angeles", 38.5, -122.5, 2025, 11, 1, -60)]
    [InlineData("Europe/Paris", 44.84, -0.58, 2025, 3, 29, +60)]
    [InlineData("Australia/Adelaide", -34.53, 138.95, 2025, 4, 5, -60)]
    [InlineData("America/Argentina/Mendoza", -33.03, -68.87, 2025, 3, 8, 0)]
    public void Keeps_its_length_while_the_clock_jumps(
        string zoneId, double latitude, double longitude, int year, int month, int day, double clockJumpMinutes)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(zoneId);
        var before = new DateOnly(year, month, day);
        var first = SamplingWindow.Of(SolarDay.For(before, latitude, longitude, zone));
        var second = SamplingWindow.Of(SolarDay.For(before.AddDays(1), latitude, longitude, zone));

        Assert.Equal(TimeSpan.FromHours(2.5), first.To - first.From);
        Assert.Equal(TimeSpan.FromHours(2.5), second.To - second.From);
        // The sun itself moves by less than half a minute from day to day.
        Assert.Equal(clockJumpMinutes, Clock(second.From, zone) - Clock(first.From, zone), 0.5);
    }

    [Fact]
    public void Contains_its_ends_and_nothing_outside()
    {
        var window = SamplingWindow.Of(SolarDay.For(new DateOnly(2025, 7, 15), 38.5, -122.5, TimeZoneInfo.Utc), 0.5, 2);

        Assert.Equal(TimeSpan.FromHours(2.5), window.To - window.From);
        Assert.True(window.Contains(window.From.ToOffset(TimeSpan.FromHours(-7))));
        Assert.True(window.Contains(window.To));
        Assert.False(window.Contains(window.From.AddSeconds(-1)));
        Assert.False(window.Contains(window.To.AddSeconds(1)));
    }

    [Fact]
    public void Hours_that_are_none_are_refused_by_name()
    {
        var day = SolarDay.For(new DateOnly(2025, 7, 15), 38.5, -122.5, TimeZoneInfo.Utc);

        Assert.Equal("hoursBefore", Assert.Throws<ArgumentOutOfRangeException>(() => SamplingWindow.Of(day, -1)).ParamName);
        Assert.Equal("hoursAfter", Assert.Throws<ArgumentOutOfRangeException>(() => SamplingWindow.Of(day, 1, double.NaN)).ParamName);
    }

    private static double Clock(DateTimeOffset instant, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(instant, zone).TimeOfDay.TotalMinutes;
}
