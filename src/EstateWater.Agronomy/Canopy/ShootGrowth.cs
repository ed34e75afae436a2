using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Canopy;

/// <summary>Shoots and their tips, which slow before leaves show any lack of water.</summary>
[Method(
    "Growing-tips index and shoot length",
    Source = "Apices observed in three growth classes, fifty to a block (OENO One 5481, iG-Apex); the weights 1, 0.5, 0 are from memory, to be checked; shoot length: common practice, no published source",
    Check = "By hand: 20 growing, 20 slowed, 10 stopped is 0.6")]
public static class ShootGrowth
{
    /// <summary>Apices to look at in a block. [apices]</summary>
    public const int ApicesPerBlock = 50;

    /// <summary>Growing-tips index: 1 when all grow, 0 when all have stopped. [–]</summary>
    /// <param name="growing">0 or more.</param>
    /// <param name="slowed">0 or more.</param>
    /// <param name="stopped">0 or more; at least one apex in all.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is negative, or there is no apex.</exception>
    /// <remarks>(n₁ + 0.5n₂)∕N.</remarks>
    public static double TipIndex(int growing, int slowed, int stopped)
    {
        Require.AtLeast(growing, 0, "apices");
        Require.AtLeast(slowed, 0, "apices");
        Require.AtLeast(stopped, 0, "apices");
        double all = Require.AtLeast(growing + slowed + stopped, 1, "apices in all", nameof(growing));
        return (growing + (0.5 * slowed)) / all;
    }

    /// <summary>Shoot length against the length wanted.</summary>
    /// <param name="lengthCm">Above 0. [cm]</param>
    /// <param name="targetCm">Wanted at ripening, above 0. [cm]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Within a tenth of the target counts as there. Ours.</remarks>
    public static ShootLengthState Against(double lengthCm, double targetCm) =>
        (Require.Above(lengthCm, 0, "cm") / Require.Above(targetCm, 0, "cm")) switch
        {
            < 0.9 => ShootLengthState.TooShort,
            <= 1.1 => ShootLengthState.AtTarget,
            _ => ShootLengthState.TooLong,
        };
}

/// <summary>Shoot length against the length wanted.</summary>
public enum ShootLengthState
{
    /// <summary>Shorter than wanted.</summary>
    TooShort,

    /// <summary>About as wanted.</summary>
    AtTarget,

    /// <summary>Longer than wanted: canopy enough, water makes more of it.</summary>
    TooLong,
}
