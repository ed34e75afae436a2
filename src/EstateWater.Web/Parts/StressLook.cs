namespace EstateWater.Web.Parts;

/// <summary>How a stress class is shown: a word, a glyph, a pattern and one of five shades that keep their order in grey and for every kind of colour vision.</summary>
/// <param name="Key">Short name used in class names and pattern ids.</param>
/// <param name="Words">The class in words.</param>
/// <param name="Glyph">A mark that tells the classes apart without colour.</param>
/// <param name="Fill">Shade, an even sample of the cividis scale (Nuñez, Anderton and Renslow, 2018).</param>
/// <param name="Ink">Colour of a label on it.</param>
public sealed record StressLook(string Key, string Words, string Glyph, string Fill, string Ink)
{
    /// <summary>A reading older than this says nothing about today: readings are weekly, with room for a late round. [days]</summary>
    public const int RecentDays = 10;

    /// <summary>From the wettest to the driest.</summary>
    public static IReadOnlyList<StressLook> Classes { get; } =
    [
        new("s0", "none", "○", "#fee838", "#000000"),
        new("s1", "weak", "◔", "#bcae6c", "#000000"),
        new("s2", "moderate to weak", "◑", "#7d7c78", "#000000"),
        new("s3", "moderate to severe", "◕", "#434e6c", "#ffffff"),
        new("s4", "severe", "●", "#00224e", "#ffffff"),
    ];

    /// <summary>For a block whose last reading is too old or missing: outside the scale.</summary>
    public static StressLook Unknown { get; } = new("su", "no recent reading", "?", "#e4e4df", "#000000");

    /// <summary>The look of a class in words, as the plan gives it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The words name no class.</exception>
    public static StressLook Of(string words) =>
        Classes.FirstOrDefault(look => string.Equals(look.Words, words, StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentOutOfRangeException(
            nameof(words), words, $"No such stress class; there are: {string.Join(", ", Classes.Select(look => look.Words))}.");
}
