namespace EstateWater.Planning.Needs;

/// <summary>What water must spare to be worth putting on.</summary>
internal static class WaterPrice
{
    /// <summary>What a millimetre must at least spare in its block; it keeps water from being spent on trouble nobody would see. Ours.</summary>
    public const double LeastPerMm = 0.03;

    // Fruit comes first when there is not enough for all; leaves after harvest only fill the vine's reserves. Ours.
    private const double AfterHarvest = 0.1;

    /// <summary>What a day's trouble counts when water is short this season.</summary>
    /// <param name="isPicked">Whether the fruit is off.</param>
    public static double WeightWhenShort(bool isPicked) => isPicked ? AfterHarvest : 1;

    /// <summary>A block's weight: its hectares, times its priority.</summary>
    public static double Weight(PlanBlock block) => Hectares(block) * PriorityShare(block);

    /// <summary>What an hour of a valve must spare, in trouble by hectares and priority.</summary>
    /// <param name="blocks">The valve's blocks, with their rates. [mm/h]</param>
    /// <param name="seasonPerMm">
    /// What a millimetre over a hectare is worth later in the season, 0 when it is not short. The same for every block, so
    /// that of two blocks in like trouble the one of lower priority goes without first.
    /// </param>
    public static double PerHour(IEnumerable<(PlanBlock Block, double RateMmPerH)> blocks, double seasonPerMm) =>
        blocks.Sum(b => b.RateMmPerH * Hectares(b.Block) * Math.Max(LeastPerMm * PriorityShare(b.Block), seasonPerMm));

    private static double Hectares(PlanBlock block) => block.AreaM2 / 10_000;

    private static double PriorityShare(PlanBlock block) => block.Priority / 3.0;
}
