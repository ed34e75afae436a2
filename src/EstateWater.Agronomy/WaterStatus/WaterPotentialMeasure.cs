namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Which water potential a pressure chamber reading stands for.</summary>
public enum WaterPotentialMeasure
{
    /// <summary>Midday leaf: a sunlit leaf that transpires until it is cut.</summary>
    Leaf,

    /// <summary>Midday stem: a leaf bagged long enough to come to equilibrium with the stem.</summary>
    Stem,

    /// <summary>Before dawn: a leaf in equilibrium with the soil.</summary>
    Predawn,
}

/// <summary>Where the leaf hung.</summary>
public enum LeafExposure
{
    /// <summary>In full sun.</summary>
    Sun,

    /// <summary>In shade.</summary>
    Shade,
}
