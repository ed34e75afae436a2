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
        var hours = TypedQuantity.Read(text, DisplayUnit.Hour) ?? double.NaN;
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
