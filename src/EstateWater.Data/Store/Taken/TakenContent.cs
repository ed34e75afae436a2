using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Data.Store.Taken;

/// <summary>What was taken in a block: one of the four kinds is filled, the others are empty.</summary>
public sealed record TakenContent
{
    private static readonly JsonSerializerOptions Canonical = new()
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter() },
    };

    /// <summary>What was taken.</summary>
    public required TakenKind Kind { get; init; }

    /// <summary>Where.</summary>
    public required string BlockCode { get; init; }

    /// <summary>When; of leaves, when the first was read.</summary>
    public required DateTimeOffset TakenAt { get; init; }

    /// <summary>Leaves in the chamber.</summary>
    public LeafSet? Leaves { get; init; }

    /// <summary>Depths of a tube.</summary>
    public TubeProfile? Soil { get; init; }

    /// <summary>A look at the canopy.</summary>
    public CanopyFacts? Canopy { get; init; }

    /// <summary>Modified Eichhorn–Lorenz number, 1–47.</summary>
    public double? ElStage { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }

    /// <summary>The same text for the same content.</summary>
    public string ToText() => JsonSerializer.Serialize(this, Canonical);

    /// <summary>The content of a text that <see cref="ToText"/> gave.</summary>
    public static TakenContent Parse(string text) => JsonSerializer.Deserialize<TakenContent>(text, Canonical)!;
}

/// <summary>Leaves of one measure.</summary>
/// <param name="Measure">Which water potential.</param>
/// <param name="Leaves">In the order in which they were read.</param>
public sealed record LeafSet(WaterPotentialMeasure Measure, IReadOnlyList<TakenLeaf> Leaves);

/// <summary>One leaf.</summary>
/// <param name="TakenAt">When it was read.</param>
/// <param name="TensionBar">Balancing pressure. [bar, positive]</param>
public sealed record TakenLeaf(DateTimeOffset TakenAt, double TensionBar)
{
    /// <summary>Group of vines along the block; null when not noted.</summary>
    public string? Group { get; init; }

    /// <summary>Sun or shade; null when not noted.</summary>
    public LeafExposure? Exposure { get; init; }

    /// <summary>Minutes in the bag; null when not noted. [min]</summary>
    public double? BaggedMin { get; init; }

    /// <summary>From the cut to the chamber; null when not noted. [s]</summary>
    public double? DelayS { get; init; }
}

/// <summary>Depths of a tube, as water content or as counts with their standard count.</summary>
/// <param name="Tube">Which tube.</param>
/// <param name="StandardCount">Of the session; null where water content was read.</param>
/// <param name="Depths">From the top down.</param>
public sealed record TubeProfile(string Tube, double? StandardCount, IReadOnlyList<TubeDepth> Depths);

/// <summary>One depth.</summary>
/// <param name="DepthCm">Below the surface. [cm]</param>
/// <param name="VwcM3PerM3">Water content, or null for a count. [m³/m³]</param>
/// <param name="Count">Neutron count, or null for a water content.</param>
public sealed record TubeDepth(double DepthCm, double? VwcM3PerM3, double? Count);

/// <summary>What a canopy visit saw; at least one of it.</summary>
/// <param name="ShootLengthCm">[cm]</param>
/// <param name="ShadedFraction">Share of the ground shaded at solar noon, 0–1.</param>
/// <param name="GrowingTipsPct">Shoots whose tips still grow. [%]</param>
/// <param name="VisualStress">0 none to 3 leaves yellowing or lost.</param>
public sealed record CanopyFacts(double? ShootLengthCm, double? ShadedFraction, double? GrowingTipsPct, int? VisualStress);
