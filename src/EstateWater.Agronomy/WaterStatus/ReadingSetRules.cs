using EstateWater.Agronomy.Sun;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Limits of the checks of a reading set. Editable defaults: common practice and published protocols, named at each.</summary>
public sealed record ReadingSetRules
{
    /// <summary>The rules that ship.</summary>
    public static ReadingSetRules Default { get; } = new();

    /// <summary>Earliest before solar noon for a midday reading: the hours in which rounds are planned (<see cref="SamplingWindow"/>). [min]</summary>
    public double WindowBeforeMin { get; init; } = SamplingWindow.DefaultHoursBefore * 60;

    /// <summary>Latest after solar noon for a midday reading, likewise. [min]</summary>
    public double WindowAfterMin { get; init; } = SamplingWindow.DefaultHoursAfter * 60;

    /// <summary>So much outside the window a midday reading is refused rather than doubted. Ours. [min]</summary>
    public double NearWindowMin { get; init; } = 30;

    /// <summary>Farthest from the time of day of the set before. Ours. [min]</summary>
    public double SameTimeMin { get; init; } = 45;

    /// <summary>Fewest leaves: 3, 5 or 10 make a set. Common practice, no published source. [leaves]</summary>
    public int FewestLeaves { get; init; } = 3;

    /// <summary>Shorter in the bag is refused for stem. Levin (2019), Agric. Water Manage. 221:422–429: 10 min was enough. [min]</summary>
    public double ShortestBagMin { get; init; } = 10;

    /// <summary>Shorter in the bag than this gets a note. Common practice: at least a quarter of an hour, an hour is better. [min]</summary>
    public double GoodBagMin { get; init; } = 15;

    /// <summary>Longer from cut to chamber without a bag gets a note. Levin (2019): up to 30 s did no harm. [s]</summary>
    public double LongDelayS { get; init; } = 30;

    /// <summary>Longer from cut to chamber is refused without a bag and gets a note with one. Ours. [s]</summary>
    public double LongestDelayS { get; init; } = 60;

    /// <summary>Largest usual standard deviation of leaf readings. From memory, to be checked. [MPa]</summary>
    public double LeafSpreadMpa { get; init; } = 0.2;

    /// <summary>Largest usual standard deviation of stem and predawn readings: less than leaf, McCutchan &amp; Shackel (1992). The number is from memory, to be checked. [MPa]</summary>
    public double StemSpreadMpa { get; init; } = 0.15;

    /// <summary>Largest difference of two leaves of a vine. Common practice 0.5 to 1 bar. [MPa]</summary>
    public double LeafPairMpa { get; init; } = 0.1;

    /// <summary>Largest change since the set before. Ours. [MPa]</summary>
    public double JumpMpa { get; init; } = 0.5;

    /// <summary>Farthest on the wet side of the baseline. Ours. [MPa]</summary>
    public double WetterThanBaselineMpa { get; init; } = 0.15;

    /// <summary>Whether a leaf's handling makes it say little of its measure: from the shade for leaf, hardly bagged for stem, or long on the way without a bag.</summary>
    /// <param name="leaf">The leaf.</param>
    public bool IsSpoiled(LeafFact leaf)
    {
        ArgumentNullException.ThrowIfNull(leaf);
        return (leaf.Measure == WaterPotentialMeasure.Leaf && leaf.Exposure == LeafExposure.Shade)
            || (leaf.Measure == WaterPotentialMeasure.Stem && leaf.BaggedMin < ShortestBagMin)
            || (leaf.DelayS > LongestDelayS && !IsBagged(leaf));
    }

    /// <summary>A leaf in its bag loses little on the way.</summary>
    internal bool IsBagged(LeafFact leaf) => leaf.BaggedMin >= ShortestBagMin;

    /// <summary>Tensions that vines show, by measure. Ours. [MPa, positive]</summary>
    /// <param name="measure">Which measure.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a measure.</exception>
    public static (double LowestMpa, double HighestMpa) PlausibleRange(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => (0.2, 2.5),
        WaterPotentialMeasure.Stem => (0.1, 2.2),
        WaterPotentialMeasure.Predawn => (0, 1.5),
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Expected Leaf, Stem or Predawn."),
    };
}
