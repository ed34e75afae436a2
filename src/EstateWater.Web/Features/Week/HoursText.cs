using System.Globalization;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>Hours as people type them: comma or point, with or without the unit, rounded to whole quarter hours.</summary>
public static class HoursText
{
    /// <summary>The step of hours. [h]</summary>
    public const double QuarterHour = 0.25;

    private const double Example = 6.5;

    /// <summary>Reads hours between 0 and a greatest; otherwise says the rule with an example.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="greatest">[h]</param>
    /// <param name="units">How the person writes numbers.</param>
    public static (double? Hours, string? Error) Read(string? text, double greatest, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(units);
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
            : (null, $"Hours must be between 0 and {units.Trimmed(greatest)}, like {units.Trimmed(Example)}");
    }

    /// <summary>The next quarter hour up (1) or down (−1), kept between 0 and the greatest.</summary>
    public static double Step(double hours, int direction, double greatest) =>
        Math.Clamp(Round(hours) + (direction * QuarterHour), 0, greatest);

    private static double Round(double hours) =>
        Math.Round(hours / QuarterHour, MidpointRounding.AwayFromZero) * QuarterHour;
}
