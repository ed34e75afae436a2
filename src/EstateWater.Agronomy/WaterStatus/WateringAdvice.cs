namespace EstateWater.Agronomy.WaterStatus;

/// <summary>One thing that speaks for water, against it, or asks for something else first. A person decides.</summary>
/// <param name="Rule">Which rule.</param>
/// <param name="Lean">Where it leans.</param>
/// <param name="Words">A short sentence for people.</param>
public sealed record WateringAdvice(WateringRule Rule, WateringLean Lean, string Words);

/// <summary>Where a piece of advice leans.</summary>
public enum WateringLean
{
    /// <summary>For water.</summary>
    Water,

    /// <summary>Against water now.</summary>
    Withhold,

    /// <summary>Something else comes first.</summary>
    First,
}

/// <summary>Rules that give advice.</summary>
public enum WateringRule
{
    /// <summary>The vine is drier than wanted.</summary>
    VineDry,

    /// <summary>The vine may be drier than wanted: the ceiling lies within the interval.</summary>
    VineNearCeiling,

    /// <summary>The vine is past what it should ever see.</summary>
    VinePastLimit,

    /// <summary>The wetted soil is down to its refill point.</summary>
    SoilAtRefill,

    /// <summary>Tips have slowed more than wanted.</summary>
    TipsSlow,

    /// <summary>Heat is coming.</summary>
    HeatAhead,

    /// <summary>The soil still holds enough.</summary>
    SoilNotAtRefill,

    /// <summary>Tips grow hard before set and nothing is short.</summary>
    TipsVigorousEarly,

    /// <summary>Rain will do it.</summary>
    RainAhead,

    /// <summary>Harvest is near.</summary>
    HarvestNear,

    /// <summary>Dry leaves in very dry air above soil that is not dry.</summary>
    DryAirOnly,

    /// <summary>The set failed its checks.</summary>
    ReadAgain,

    /// <summary>Read within a day of water.</summary>
    Recovering,

    /// <summary>The drip is uneven or leaks.</summary>
    RepairFirst,
}
