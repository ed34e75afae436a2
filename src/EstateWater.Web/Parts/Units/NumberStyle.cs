using System.Globalization;
using System.Text.RegularExpressions;

namespace EstateWater.Web.Parts.Units;

/// <summary>How a person writes numbers, days and clock times.</summary>
/// <param name="Key">Its name in forms and cookies.</param>
/// <param name="Words">As people say it, by example.</param>
/// <param name="Numbers">Marks of numbers.</param>
/// <param name="MonthFirst">Whether the month comes before the day.</param>
/// <param name="TwelveHours">Whether clocks go to twelve.</param>
public sealed partial record NumberStyle(string Key, string Words, NumberFormatInfo Numbers, bool MonthFirst, bool TwelveHours)
{
    private const string ThinSpace = "\u202F";

    /// <summary>Decimal point, thin space between thousands, day before month.</summary>
    public static NumberStyle Point { get; } = new("en", "1 234.5 · Wed 22 Jan · 20:00", Marks(".", ThinSpace), false, false);

    /// <summary>Decimal comma, thin space between thousands, day before month.</summary>
    public static NumberStyle Comma { get; } = new("es", "1 234,5 · Wed 22 Jan · 20:00", Marks(",", ThinSpace), false, false);

    /// <summary>Decimal point, comma between thousands, month before day, twelve hours.</summary>
    public static NumberStyle American { get; } = new("en-US", "1,234.5 · Wed Jan 22 · 8:00 PM", Marks(".", ","), true, true);

    /// <summary>All styles.</summary>
    public static IReadOnlyList<NumberStyle> All { get; } = [Point, Comma, American];

    /// <summary>The style of a key; null where there is none of it.</summary>
    public static NumberStyle? Of(string? key) => All.FirstOrDefault(style => style.Key == key);

    /// <summary>A format of days and instants in this style: one written day first and with 24 hours is turned.</summary>
    public string Turned(string format)
    {
        ArgumentNullException.ThrowIfNull(format);
        var order = MonthFirst ? DayOfMonth().Replace(format, day => $"{day.Groups[1].Value} d{(day.Groups[2].Success ? ", yyyy" : "")}") : format;
        return TwelveHours ? order.Replace("HH:mm", "h:mm tt", StringComparison.Ordinal) : order;
    }

    // The day of the month before its month; the d's of a weekday's name are none.
    [GeneratedRegex("(?<!d)d (MMMM?)( yyyy)?")]
    private static partial Regex DayOfMonth();

    private static NumberFormatInfo Marks(string point, string thousands)
    {
        var marks = (NumberFormatInfo)CultureInfo.InvariantCulture.NumberFormat.Clone();
        (marks.NumberDecimalSeparator, marks.NumberGroupSeparator) = (point, thousands);
        (marks.PercentDecimalSeparator, marks.PercentGroupSeparator) = (point, thousands);
        return NumberFormatInfo.ReadOnly(marks);
    }
}
