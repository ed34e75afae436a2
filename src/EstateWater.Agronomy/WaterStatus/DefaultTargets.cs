using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>The tension wanted through the season where the estate has set none of its own.</summary>
/// <remarks>From memory, to be checked; every number is a default that the estate's own targets replace.</remarks>
[Method(
    "Default tension targets by growth stage",
    Source = "Put together from Ojeda (2007), McCarthy in FAO Water Reports 22 (2002), and extension practice for regulated deficit irrigation; midday leaf, from memory, to be checked",
    Check = "Editable default: tested for its shape, not against a publication")]
public static class DefaultTargets
{
    private static readonly (double From, double To, TensionTarget Concentrated, TensionTarget FruitForward, TensionTarget White)[] LeafRows =
    [
        (1, 19, new(6, 9, 10), new(6, 9, 10), new(6, 9, 10)),
        (19, 27, new(7, 10, 10), new(7, 9, 10), new(7, 9, 10)),
        (27, 35, new(11, 14, 15), new(10, 12, 15), new(9, 11, 12)),
        (35, 38, new(12, 14, 16), new(11, 13, 16), new(9, 12, 13)),
        (38, 47, new(8, 11, 12), new(8, 11, 12), new(8, 11, 12)),
    ];

    /// <summary>Target of a block; reds as for concentrated wine.</summary>
    /// <param name="isWhite">Whether the fruit is white.</param>
    /// <param name="elStage">Modified Eichhorn–Lorenz number, 1–47. A stage that ends one row and starts the next belongs to the next, but 38, ripe and not yet picked, to ripening.</param>
    /// <param name="measure">Measure wanted; stem and predawn are estimated from leaf.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range, or not a measure.</exception>
    public static TensionTarget For(bool isWhite, double elStage, WaterPotentialMeasure measure) =>
        For(isWhite ? WineStyle.White : WineStyle.RedConcentrated, elStage, measure);

    /// <summary>Target for a style of wine.</summary>
    /// <param name="style">The style.</param>
    /// <param name="elStage">Modified Eichhorn–Lorenz number, 1–47.</param>
    /// <param name="measure">Measure wanted; stem and predawn are estimated from leaf.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range, not a style, or not a measure.</exception>
    public static TensionTarget For(WineStyle style, double elStage, WaterPotentialMeasure measure)
    {
        Require.InRange(elStage, 1, 47, "(modified Eichhorn–Lorenz)");
        var row = Array.Find(LeafRows, r => r.To == 38 ? elStage <= 38 : elStage < r.To || r.To == 47);
        var leaf = style switch
        {
            WineStyle.White => row.White,
            WineStyle.RedFruitForward => row.FruitForward,
            WineStyle.RedConcentrated => row.Concentrated,
            _ => throw new ArgumentOutOfRangeException(nameof(style), style, "Expected a wine style."),
        };
        return new TensionTarget(InBar(leaf.FloorBar), InBar(leaf.CeilingBar), InBar(leaf.LimitBar));

        double InBar(double leafBar) => MeasureConversion.Convert(WaterPotentialMeasure.Leaf, measure, leafBar / 10).TensionMpa * 10;
    }
}

/// <summary>What the fruit is for.</summary>
public enum WineStyle
{
    /// <summary>Red, concentrated.</summary>
    RedConcentrated,

    /// <summary>Red, fruit-forward.</summary>
    RedFruitForward,

    /// <summary>White or sparkling.</summary>
    White,
}

/// <summary>The tension wanted.</summary>
/// <param name="FloorBar">Wettest tension wanted. [bar, positive]</param>
/// <param name="CeilingBar">Driest tension wanted. [bar, positive]</param>
/// <param name="LimitBar">Tension that is never to be passed. [bar, positive]</param>
public readonly record struct TensionTarget(double FloorBar, double CeilingBar, double LimitBar)
{
    /// <summary>Gives floor and ceiling.</summary>
    /// <param name="floorBar">Wettest tension wanted. [bar, positive]</param>
    /// <param name="ceilingBar">Driest tension wanted. [bar, positive]</param>
    public void Deconstruct(out double floorBar, out double ceilingBar) => (floorBar, ceilingBar) = (FloorBar, CeilingBar);
}
