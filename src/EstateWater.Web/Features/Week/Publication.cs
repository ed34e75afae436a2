namespace EstateWater.Web.Features.Week;

/// <summary>Who publishes, and what they say to the irrigators.</summary>
/// <param name="By">A name.</param>
/// <param name="Note">Null when nothing is said.</param>
public sealed record Publication(string By, string? Note);
