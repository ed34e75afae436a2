using System.Globalization;

namespace EstateWater.Data.Folder;

/// <summary>A column of a file (a property, in GeoJSON): its name, and what its values may be.</summary>
internal sealed class Column(string name)
{
    public string Name { get; } = name;

    public bool IsRequired { get; init; }

    /// <summary>Longest text allowed. [characters]</summary>
    public int MaxLength { get; init; } = 100;

    /// <summary>Smallest number allowed.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>Greatest number allowed.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>Whether <see cref="Min"/> itself is refused.</summary>
    public bool MinExcluded { get; init; }

    /// <summary>What people often mean when the value is out of range.</summary>
    public string? Hint { get; init; }

    /// <summary>Says why a number is refused; <see langword="null"/> when it is fine.</summary>
    public string? ProblemWith(double value)
    {
        var inRange = value <= Max && (MinExcluded ? value > Min : value >= Min);
        return inRange ? null : $"{Text(value)} is out of range; {Range}{(Hint is null ? "" : $" ({Hint})")}";
    }

    /// <summary>Says why a text is refused; <see langword="null"/> when it is fine.</summary>
    public string? ProblemWith(string text) =>
        text.Length > MaxLength ? $"has {text.Length} characters; use at most {MaxLength}" : null;

    private string Range => (double.IsInfinity(Min), double.IsInfinity(Max)) switch
    {
        (false, true) => MinExcluded ? $"it must be more than {Text(Min)}" : $"it must be {Text(Min)} or more",
        (true, false) => $"it must be {Text(Max)} or less",
        _ => MinExcluded ? $"it must be more than {Text(Min)} and at most {Text(Max)}" : $"it must be {Text(Min)} to {Text(Max)}",
    };

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
