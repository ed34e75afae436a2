using System.Globalization;

namespace EstateWater.Web.Parts.Units;

/// <summary>A quantity as people type it in their own unit: comma or point, with or without the unit. What is read and shown again is what was typed.</summary>
public static class TypedQuantity
{
    // Finer than any gauge, meter or rule, and coarser than what a conversion there and back loses.
    private const string Shown = "0.######";

    /// <summary>The kept value of a text; null when it is no number.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="unit">The unit in which it was typed.</param>
    public static double? Read(string? text, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var number = (text ?? "").Trim();
        number = number.EndsWith(unit.Symbol, StringComparison.OrdinalIgnoreCase) ? number[..^unit.Symbol.Length].TrimEnd() : number;
        // One mark at most, so that 1,234.5 is refused rather than guessed at.
        return number.Count(c => c is ',' or '.') <= 1
            && double.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var typed)
            ? unit.Keep(typed)
            : null;
    }

    /// <summary>A kept value as one would type it.</summary>
    public static string Show(double kept, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return unit.Show(kept).ToString(Shown, CultureInfo.InvariantCulture);
    }
}
