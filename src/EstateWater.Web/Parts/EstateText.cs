using System.Globalization;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Web.Parts;

/// <summary>Ages, counts and words as people of the estate say them; quantities and days are told by the reader’s own choice of units.</summary>
public static class EstateText
{
    private static readonly string[] Words =
        ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

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
}
