using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>The mean of a reading set, as evidence.</summary>
/// <param name="Date">The day.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="TensionMpa">Mean tension, positive. [MPa]</param>
/// <param name="StandardErrorMpa">Standard error of the mean. [MPa]</param>
public sealed record TensionEvidence(DateOnly Date, WaterPotentialMeasure Measure, double TensionMpa, double StandardErrorMpa);

/// <summary>The mean water content over the root depth at a block's tubes, as evidence.</summary>
/// <param name="Date">The day.</param>
/// <param name="WaterContentM3PerM3">[m³/m³]</param>
public sealed record SoilEvidence(DateOnly Date, double WaterContentM3PerM3);

/// <summary>All that is known of a block before the outlook is made.</summary>
public sealed record BlockEvidence
{
    /// <summary>The block's code; it also names its random numbers, so the order of blocks changes nothing.</summary>
    public required string Code { get; init; }

    /// <summary>What is declared.</summary>
    public required BlockDeclaration Declared { get; init; }

    /// <summary>The season up to now, and beyond where weather is expected.</summary>
    public required SeasonForcing Season { get; init; }

    /// <summary>The season before, where weather and readings exist.</summary>
    public SeasonForcing? LastSeason { get; init; }

    /// <summary>Standard deviation between the vines that are read and the block: the same vines week by week do not tell it. [MPa]; the usual of six vines in two groups where nothing is known.</summary>
    public double VinesMpa { get; init; } = VineSpread.Usual.OfMeanMpa(vines: 6, groups: 2);

    /// <summary>Reading sets, in date order.</summary>
    public IReadOnlyList<TensionEvidence> Tensions { get; init; } = [];

    /// <summary>Soil profiles, in date order.</summary>
    public IReadOnlyList<SoilEvidence> Soil { get; init; } = [];
}
