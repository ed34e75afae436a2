namespace EstateWater.Agronomy.Outlook;

/// <summary>What is not known of a block and is learned from its readings. Each is a standard normal number scaled by <see cref="Spread"/>.</summary>
public static class Unknowns
{
    /// <summary>Logarithm of the factor on declared total available water.</summary>
    public const int AvailableWater = 0;

    /// <summary>Logarithm of the factor on the crop coefficient.</summary>
    public const int WaterUse = 1;

    /// <summary>Logarithm of the factor on the declared wetted fraction.</summary>
    public const int WettedFraction = 2;

    /// <summary>Where the block sits above the baseline, all measures alike. [MPa]</summary>
    public const int Offset = 3;

    /// <summary>What the stem adds to <see cref="Offset"/>. [MPa]</summary>
    public const int StemOffset = 4;

    /// <summary>What predawn adds to <see cref="Offset"/>. [MPa]</summary>
    public const int PredawnOffset = 5;

    /// <summary>Logarithm of the factor on the climb of tension with depletion.</summary>
    public const int Climb = 6;

    /// <summary>Logarithm of the factor on the baseline's slope in VPD.</summary>
    public const int VpdResponse = 7;

    /// <summary>Logarithm of the factor on what the drippers deliver.</summary>
    public const int Delivery = 8;

    /// <summary>Depletion at the start of the current season.</summary>
    public const int StartOfSeason = 9;

    /// <summary>Depletion at the start of the season before.</summary>
    public const int StartOfLastSeason = 10;

    /// <summary>Water content of the dry soil at the tubes. [m³/m³]</summary>
    public const int TubeDryContent = 11;

    /// <summary>How much of the wetted soil the tubes see.</summary>
    public const int TubePlace = 12;

    /// <summary>Logarithm of the exponent of the climb: 1 a straight line in soil water, more where tension holds and then rises fast.</summary>
    public const int Bend = 13;

    /// <summary>Logarithm of the factor on the share of water left below which the vines drink less.</summary>
    public const int StressPoint = 14;

    /// <summary>Logarithm of the factor on how densely the strip under the drippers is rooted, against the ground between.</summary>
    public const int Roots = 15;

    /// <summary>How many an estate's blocks tell one another of; what follows is each block's own <see cref="UseDrift"/>.</summary>
    public const int Shared = 16;

    /// <summary>How many there are.</summary>
    public const int Count = Shared + UseDrift.Knots;

    /// <summary>One standard deviation of each before anything is read.</summary>
    /// <remarks>
    /// Ours, in the units of each: declared soil water is commonly wrong by a third to a half; the crop coefficient of vines
    /// spreads by a quarter about its line in shade (Williams and Ayars 2005); leaves of one estate sit up to 0.15 MPa
    /// from a published baseline; published curves of midday potential against soil water run from straight to bent. The estate's own blocks narrow them (see <see cref="EstatePrior"/>).
    /// </remarks>
    public static IReadOnlyList<double> Spread { get; } =
    [
        0.5, 0.25, 0.25, 0.15, 0.07, 0.07, 0.35, 0.30, 0.12, 1.0, 1.0, 0.05, 1.0, 0.4, 0.5, 0.4,
        .. Enumerable.Repeat(UseDrift.SpreadShare, UseDrift.Knots),
    ];
}
