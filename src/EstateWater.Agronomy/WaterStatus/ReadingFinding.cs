using EstateWater.Agronomy.Units;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>What is doubtful about a reading set.</summary>
/// <param name="Code">Which check.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Words">A short sentence for people.</param>
public sealed record ReadingFinding(ReadingCheck Code, FindingSeverity Severity, Sentence Words);

/// <summary>How much a finding matters.</summary>
public enum FindingSeverity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>The set is indicative only.</summary>
    Doubtful,

    /// <summary>The leaf or the set says little; read again.</summary>
    Reject,
}

/// <summary>Checks that a reading set should pass.</summary>
public enum ReadingCheck
{
    /// <summary>Read outside the window around solar noon, or after sunrise for predawn.</summary>
    OutsideWindow,

    /// <summary>Not at the same time of day as the set before.</summary>
    OtherTimeThanBefore,

    /// <summary>Too few leaves.</summary>
    TooFewLeaves,

    /// <summary>Shaded leaves in a set of midday leaf readings.</summary>
    ShadedLeaf,

    /// <summary>Bagged too short for a stem reading.</summary>
    BaggedTooShort,

    /// <summary>Nobody noted how long stem leaves were bagged.</summary>
    BagTimeUnknown,

    /// <summary>Too long between cut and chamber.</summary>
    DelayTooLong,

    /// <summary>Leaves differ more than is usual for the measure.</summary>
    UnusualSpread,

    /// <summary>Every leaf the same.</summary>
    NoSpread,

    /// <summary>Leaves of one vine differ.</summary>
    LeavesOfAVineDiffer,

    /// <summary>A leaf that does not belong to the others.</summary>
    OutlierLeaf,

    /// <summary>A tension that a vine does not show.</summary>
    OutOfRange,

    /// <summary>Every value a whole bar.</summary>
    RoundedToWholeBars,

    /// <summary>A jump since the set before.</summary>
    Jump,

    /// <summary>Wetter than the baseline of a vine without stress at that vapour pressure deficit.</summary>
    WetterThanBaseline,

    /// <summary>Leaf, stem and predawn mixed in one set.</summary>
    MixedMeasures,
}
