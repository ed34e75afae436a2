namespace EstateWater.Web.Features.Week;

/// <summary>Who publishes, and what they say to the irrigators.</summary>
/// <param name="By">A name.</param>
/// <param name="Note">Null when nothing is said.</param>
public sealed record Publication(string By, string? Note);

/// <summary>What is typed into the dialog, kept when it is closed without publishing.</summary>
public sealed class TypedPublication
{
    /// <summary>A name; null until one is typed.</summary>
    public string? By { get; set; }

    /// <summary>What is said to the irrigators.</summary>
    public string Note { get; set; } = "";
}
