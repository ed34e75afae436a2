namespace EstateWater.Web.Features.Week;

/// <summary>What the week's table says of a block beside its plan.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name; null when it has none.</param>
/// <param name="Valve">The valve that waters it.</param>
/// <param name="SharesValveWith">Blocks that get water whenever it does.</param>
/// <param name="Variety">What grows on it; null when nobody said.</param>
public sealed record WeekBlock(string Code, string? Name, string Valve, IReadOnlyList<string> SharesValveWith, string? Variety);
