namespace EstateWater.Web.Parts.Drawing;

/// <summary>Marks that are told apart by shape, drawn around their middle. Values of the attribute <c>d</c>.</summary>
public static class MarkShape
{
    /// <summary>For a cross over a doubtful value.</summary>
    public const string Cross = "M-4.5-4.5l9 9M4.5-4.5l-9 9";

    /// <summary>Circle, square, triangle, diamond.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "M-3.5 0a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0z",
        "M-3.2-3.2h6.4v6.4h-6.4z",
        "M0-4.4l4.4 7.4h-8.8z",
        "M0-4.8l4.8 4.8-4.8 4.8-4.8-4.8z",
    ];
}
