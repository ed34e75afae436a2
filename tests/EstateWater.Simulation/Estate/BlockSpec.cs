using EstateWater.Simulation.Soil;
using EstateWater.Simulation.Vine;

namespace EstateWater.Simulation.Estate;

/// <summary>The three ways to measure a vine's water potential with a chamber.</summary>
public enum Measure
{
    Leaf,
    Stem,
    Predawn,
}

/// <summary>What is declared of a block, right or wrong; this is all a folder tells.</summary>
public sealed record BlockSpec
{
    public required string Code { get; init; }

    public string? Name { get; init; }

    public string? Variety { get; init; }

    public string? Rootstock { get; init; }

    public bool IsWhite { get; init; }

    public int? PlantedYear { get; init; }

    public required string Station { get; init; }

    public required string Valve { get; init; }

    public double RowSpacingM { get; init; } = 2.75;

    public double VineSpacingM { get; init; } = 1.8;

    public double EmittersPerVine { get; init; } = 2;

    public double EmitterFlowLPerH { get; init; } = 2.3;

    public double? EmissionUniformity { get; init; }

    public double RootDepthM { get; init; } = 1.1;

    public double AvailableWaterMmPerM { get; init; } = 140;

    public double? WettedFraction { get; init; }

    public double? ShadedFraction { get; init; }

    public double? TargetShootLengthCm { get; init; }

    public int Priority { get; init; } = 3;

    /// <summary>How its water status is read.</summary>
    public Measure Measure { get; init; } = Measure.Leaf;

    /// <summary>Whether it has a tube for soil moisture.</summary>
    public bool HasTube { get; init; }

    /// <summary>Whether the crew reads it at all.</summary>
    public bool IsRead { get; init; } = true;

    public required Outline Outline { get; init; }

    public required BlockTruth Truth { get; init; }

    /// <summary>What the drippers put on per hour as declared. [mm/h over the block's ground]</summary>
    public double DeclaredMmPerH => EmittersPerVine * EmitterFlowLPerH / (RowSpacingM * VineSpacingM);

    /// <summary>Flow while open as declared. [m³/h]</summary>
    public double DeclaredFlowM3PerH => DeclaredMmPerH * Outline.AreaM2 / 1000;
}

/// <summary>What a block really is; no folder tells.</summary>
public sealed record BlockTruth
{
    public required Texture Topsoil { get; init; }

    public required Texture Subsoil { get; init; }

    public double StoneShare { get; init; } = 0.15;

    public double RootDepthM { get; init; } = 1.1;

    /// <summary>Share of the ground the drippers wet.</summary>
    public double WettedShare { get; init; } = 0.35;

    /// <summary>Share of the roots in it.</summary>
    public double BulbRootShare { get; init; } = 0.6;

    /// <summary>What its drippers deliver over what is declared.</summary>
    public double Delivery { get; init; } = 1;

    public required VineTraits Vine { get; init; }
}
