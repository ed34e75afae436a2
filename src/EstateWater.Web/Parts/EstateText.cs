using System.Globalization;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Web.Parts;

/// <summary>Dates, ages and numbers as people of the estate say them. Every value is in estate time and has its unit.</summary>
public static class EstateText
{
    private static readonly string[] Words =
        ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

    /// <summary>For example “Wed 22 Jan 2025, 06:00”.</summary>
    public static string Moment(DateTimeOffset at) => at.ToString("ddd d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    /// <summary>For example “Wed 22 Jan”.</summary>
    public static string Day(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>The weekday within a week from today, else the date: “today”, “tomorrow”, “Thursday”, “Thu 6 Feb”.</summary>
    public static string NearDay(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        > 1 and < 7 => day.DayOfWeek.ToString(),
        _ => Day(day),
    };

    /// <summary>The instant of a clock time on a day; a time that the spring change skips is taken an hour later.</summary>
    public static DateTimeOffset At(DateOnly day, TimeOnly time, TimeZoneInfo zone)
    {
        var local = day.ToDateTime(time);
        local = zone.IsInvalidTime(local) ? local.AddHours(1) : local;
        return new DateTimeOffset(local, zone.GetUtcOffset(local));
    }

    /// <summary>“today”, “yesterday”, “3 days ago”.</summary>
    public static string Age(DateOnly day, DateOnly today) => (today.DayNumber - day.DayNumber) switch
    {
        0 => "today",
        1 => "yesterday",
        var days => $"{days} days ago",
    };

    /// <summary>A count in words up to ten, digits above: “four”, “36”.</summary>
    public static string Count(int count) =>
        count >= 0 && count < Words.Length ? Words[count] : count.ToString(CultureInfo.InvariantCulture);

    /// <summary>“leaf”, “stem”, “predawn”.</summary>
    public static string MeasureWord(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => "leaf",
        WaterPotentialMeasure.Stem => "stem",
        WaterPotentialMeasure.Predawn => "predawn",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Leaf, Stem or Predawn."),
    };

    /// <summary>The text with its first letter large.</summary>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A number with a fixed count of decimals.</summary>
    public static string Number(double value, int decimals = 1) => value.ToString("F" + decimals, CultureInfo.InvariantCulture);

    /// <summary>Hours without needless decimals: “6 h”, “6.25 h”.</summary>
    public static string Hours(double hours) => hours.ToString("0.##", CultureInfo.InvariantCulture) + " h";

    /// <summary>Whole cubic metres with a thin space between thousands: “41 000 m³”.</summary>
    public static string CubicMetres(double m3) =>
        Math.Round(m3).ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202F') + " m³";
}
