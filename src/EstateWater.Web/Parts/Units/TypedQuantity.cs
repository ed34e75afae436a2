using System.Globalization;
using System.Text.RegularExpressions;

namespace EstateWater.Web.Parts.Units;

/// <summary>A quantity as people type it: comma or point, in their own unit or in another with its name beside it. What is read and shown again is what was typed.</summary>
/// <remarks>The field pages read with <c>wwwroot/field/quantity.js</c>, which must read the same.</remarks>
public static partial class TypedQuantity
{
    // Finer than any gauge, meter or rule, and coarser than what a conversion there and back loses.
    private const string Shown = "0.######";

    // Without the dust of the multiplication: 1.1 MPa is 11 bar.
    private const string Kept = "G14";

    /// <summary>The kept value of a text; null when it is no number, or in a unit that is none of the quantity's.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="unit">The unit in which a bare number was typed.</param>
    public static double? Read(string? text, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var written = Written().Match((text ?? "").Trim());
        var beside = written.Groups["unit"];
        return written.Success && (beside.Success ? TypedKind.Of(unit).Named(beside.Value) : unit) is { } typed
            ? Number(typed.Keep(Number(written.Groups["number"].Value.Replace(',', '.'))).ToString(Kept, CultureInfo.InvariantCulture))
            : null;
    }

    /// <summary>The unit beside a number where it is none of the quantity's; else null.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="unit">The unit in which a bare number is typed.</param>
    public static string? StrangeUnit(string? text, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var beside = Written().Match((text ?? "").Trim()).Groups["unit"];
        return beside.Success && TypedKind.Of(unit).Named(beside.Value) is null ? beside.Value : null;
    }

    /// <summary>A kept value as one would type it.</summary>
    public static string Show(double kept, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return unit.Show(kept).ToString(Shown, CultureInfo.InvariantCulture);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    // One mark at most, so that 1,234.5 is refused rather than guessed at.
    [GeneratedRegex("""^(?<number>[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)\s*(?<unit>[\p{L}%°"″].*)?$""")]
    private static partial Regex Written();
}
