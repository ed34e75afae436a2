using EstateWater.Agronomy.Units;

namespace EstateWater.Planning.Rounds;

/// <summary>How a round is walked and how sure its sets shall be. Editable defaults, common practice without a published source.</summary>
public sealed record RoundSettings
{
    /// <summary>Walking between blocks with the chamber, along roads and rows. [m/min, above 0]</summary>
    public double WalkMPerMin { get; init; } = 60;

    /// <summary>Roads and rows are longer than the straight line. [factor, 1 or more]</summary>
    public double Detour { get; init; } = 1.3;

    /// <summary>Cutting, sealing and reading one leaf. [min, above 0]</summary>
    public double MinutesPerLeaf { get; init; } = 1.5;

    /// <summary>Setting the chamber up and finding the vines in a block. [min]</summary>
    public double MinutesPerBlock { get; init; } = 4;

    /// <summary>Wanted half-width of a set's 95 % interval. [bar, above 0]</summary>
    public double HalfWidthBar { get; init; } = 1;

    /// <summary>The same in the unit of computation. [MPa]</summary>
    public double HalfWidthMpa => HalfWidthBar / Conversions.BarPerMegapascal;
}
