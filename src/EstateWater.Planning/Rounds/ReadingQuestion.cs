using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Rounds;

/// <summary>What a reading of a block would tell: the facts behind <see cref="RoundStop.Reason"/>, for those who say it in another language.</summary>
/// <param name="Measure">The measure of its target.</param>
/// <param name="DaysSinceRead">Days since it was read last; null where it never was.</param>
/// <param name="PlannedHours">Its water as planned. [h]</param>
/// <param name="Open">Where it may come to stand; null where a reading would hardly change the plan.</param>
public sealed record ReadingQuestion(WaterPotentialMeasure Measure, int? DaysSinceRead, double PlannedHours, OpenTension? Open)
{
    /// <summary>Whether its last set is in doubt, so that it is read again before it is believed.</summary>
    public bool IsReadAgain { get; init; }
}

/// <summary>Where a block may come to stand without water, on the day on which passing its ceiling is nearest to even.</summary>
/// <param name="Day">The day.</param>
/// <param name="P10Bar">Tension that it passes in nine of ten cases. [bar]</param>
/// <param name="P90Bar">Tension that it passes in one of ten cases. [bar]</param>
/// <param name="CeilingBar">Its ceiling that day. [bar]</param>
public sealed record OpenTension(DateOnly Day, double P10Bar, double P90Bar, double CeilingBar);
