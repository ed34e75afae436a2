namespace EstateWater.Planning.Seasons;

/// <summary>How the rest of a source's season is expected to go at a price of water.</summary>
/// <param name="PricePerMm">Trouble that a millimetre over a hectare must spare; 0 when water is not short. [1/(mm ha)]</param>
/// <param name="TotalM3">Water used. [m³]</param>
/// <param name="RipeningLaterM3">The part put on between veraison and harvest, past the days that a plan decides. [m³]</param>
/// <param name="Trouble">Trouble met, by hectares and priority.</param>
/// <param name="M3ByPriority">Water used, by priority of the blocks. [m³]</param>
internal sealed record SeasonUse(double PricePerMm, double TotalM3, double RipeningLaterM3, double Trouble, IReadOnlyDictionary<int, double> M3ByPriority);
