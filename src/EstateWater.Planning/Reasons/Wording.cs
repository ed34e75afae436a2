using System.Globalization;
using EstateWater.Agronomy.Units;

namespace EstateWater.Planning.Reasons;

/// <summary>Numbers and days as reasons write them.</summary>
internal static class Wording
{
    public static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);

    public static string Hours(int quarters) => Say($"{quarters / 4.0:0.##} h");

    public static string Bar(double mpa) => Say($"{mpa * Conversions.BarPerMegapascal:0.0} bar");

    public static string Day(DateOnly day) => Say($"{day:ddd d MMM}");
}
