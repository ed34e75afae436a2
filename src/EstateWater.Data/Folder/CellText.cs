using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace EstateWater.Data.Folder;

/// <summary>The forms that numbers, days and instants have in the files, the same everywhere in the world.</summary>
internal static class CellText
{
    private const NumberStyles NumberForm = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;

    // Outside these a year is a slip of the pen, and clock arithmetic stays far from its limits.
    private const int FirstYear = 1900;
    private const int LastYear = 2199;

    public static bool TryNumber(string text, out double number, [NotNullWhen(false)] out string? problem)
    {
        var isNumber = double.TryParse(text, NumberForm, Invariant, out number) && double.IsFinite(number);
        problem = isNumber ? null
            : text.Contains(',') ? $"'{text}' has a comma; use a point for decimals and nothing between thousands"
            : $"'{text}' is not a number; leave the cell empty where nothing was measured";
        number = isNumber ? number : 0;
        return isNumber;
    }

    public static bool TryDate(string text, out DateOnly date, [NotNullWhen(false)] out string? problem)
    {
        problem = DateOnly.TryParseExact(text, "yyyy-MM-dd", Invariant, DateTimeStyles.None, out date)
            ? YearProblem(date.Year)
            : $"'{text}' is not a date; write it like 2026-07-14";
        return problem is null;
    }

    public static bool TryTimeOfDay(string text, out TimeOnly time, [NotNullWhen(false)] out string? problem)
    {
        problem = TimeOnly.TryParseExact(text, "HH:mm", Invariant, DateTimeStyles.None, out time)
            ? null
            : $"'{text}' is not a time of day; write it like 20:00{(text == "24:00" ? ", and midnight as 00:00" : "")}";
        return problem is null;
    }

    public static bool TryInstant(string text, out DateTimeOffset instant, [NotNullWhen(false)] out string? problem)
    {
        const string example = "2026-07-14T13:05:00+02:00";
        if (!DateTimeOffset.TryParseExact(text, ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mmK"], Invariant, DateTimeStyles.AssumeUniversal, out instant))
        {
            problem = $"'{text}' is not an instant; write it like {example}";
        }
        else if (text[^1] != 'Z' && text[^6] is not ('+' or '-'))
        {
            problem = $"'{text}' has no offset from UTC; write it like {example}";
        }
        else
        {
            problem = YearProblem(instant.Year);
        }

        return problem is null;
    }

    public static string Number(double number) => number.ToString("R", Invariant);

    public static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", Invariant);

    public static string TimeOfDay(TimeOnly time) => time.ToString("HH:mm", Invariant);

    /// <summary>An instant as the clock of the estate shows it, with its offset.</summary>
    public static string Instant(DateTimeOffset instant, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(instant, zone).ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", Invariant);

    private static string? YearProblem(int year) =>
        year is >= FirstYear and <= LastYear ? null : $"the year {year} is out of range; it must be {FirstYear} to {LastYear}";
}
