using System.Globalization;

namespace EstateWater.Agronomy.Units;

/// <summary>How one reader is told quantities, numbers and days.</summary>
public interface IWording
{
    /// <summary>A quantity in the reader's unit.</summary>
    string Tell(Quantity quantity);

    /// <summary>A number, a day or an instant.</summary>
    /// <param name="value">The value.</param>
    /// <param name="format">Its format; null for the usual one.</param>
    string Tell(IFormattable value, string? format);
}

/// <summary>The wording of documents: the units of the estate folder, a decimal point, English days.</summary>
internal sealed class DocumentWording : IWording
{
    public static DocumentWording Instance { get; } = new();

    public string Tell(Quantity quantity) => quantity.ToString();

    public string Tell(IFormattable value, string? format) => value.ToString(format, CultureInfo.InvariantCulture);
}
