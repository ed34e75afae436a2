using System.Globalization;

namespace EstateWater.Web.Features.Sets;

/// <summary>How people call a night.</summary>
public static class NightTitle
{
    /// <summary>The night that begins on a day, seen from a moment of the estate: Tonight, Tue 21 Jan.</summary>
    public static string Of(DateOnly night, DateTimeOffset now, bool running)
    {
        var days = night.DayNumber - DateOnly.FromDateTime(now.DateTime).DayNumber;
        var date = night.ToString("ddd d MMM", CultureInfo.InvariantCulture);
        return (running, days) switch
        {
            (true, _) => $"Running now, from {date}",
            (_, -1) => $"Last night, {date}",
            (_, 0) => $"Tonight, {date}",
            (_, 1) => $"Tomorrow night, {date}",
            _ => $"Night of {date}",
        };
    }
}
