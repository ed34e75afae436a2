using System.Globalization;

namespace EstateWater.Web.Features.Week;

/// <summary>Hours as people type them: comma or point, with or without the unit, rounded to whole quarter hours.</summary>
public static class HoursText
{
    /// <summary>The step of hours. [h]</summary>
    public const double QuarterHour = 0.25;

    /// <summary>Reads hours between 0 and a greatest; otherwise says the rule with an example.</summary>
    public static (double? Hours, string? Error) Read(string? text, double greatest)
    {
        var number = (text ?? "").Trim();
        if (number.EndsWith("h", StringComparison.OrdinalIgnoreCase))
        {
            number = number[..^1].TrimEnd();
        }

        // One mark at most, so that 1,234.5 is refused rather than guessed at.
        var marks = number.Count(c => c is ',' or '.');
        var hours = marks <= 1
            && double.TryParse(
                number.Replace(',', '.'),
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var read)
            ? read
            : double.NaN;
        return hours >= 0 && hours <= greatest
            ? (Round(hours), null)
            : (null, string.Create(CultureInfo.InvariantCulture, $"Hours must be between 0 and {greatest:0.##}, like 6.5"));
    }

    /// <summary>The next quarter hour up (1) or down (−1), kept between 0 and the greatest.</summary>
    public static double Step(double hours, int direction, double greatest) =>
        Math.Clamp(Round(hours) + (direction * QuarterHour), 0, greatest);

    /// <summary>Hours as text: 6.5.</summary>
    public static string Show(double hours) => hours.ToString("0.##", CultureInfo.InvariantCulture);

    private static double Round(double hours) =>
        Math.Round(hours / QuarterHour, MidpointRounding.AwayFromZero) * QuarterHour;
}
