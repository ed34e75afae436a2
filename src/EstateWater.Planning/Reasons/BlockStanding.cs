using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Reasons;

/// <summary>Says where a block stands by what was read in it.</summary>
internal static class BlockStanding
{
    public static Sentence Words(BlockOutcome outcome)
    {
        var limits = outcome.Course.Limits;
        var sets = outcome.Course.State.Sets.Where(s => s.Measure == limits.Measure).ToList();
        if (outcome.Course.State.Sets.Count == 0)
        {
            return Sentence.Of($"not read yet, planned from its soil, canopy and weather alone with a wide band, {Wording.Tension(Descriptive.Median(outcome.Course.Unwatered[0]))} expected today");
        }

        if (sets.Count == 0)
        {
            return Sentence.Of($"never read in its target's measure, {Wording.Tension(Descriptive.Median(outcome.Course.Unwatered[0]))} expected today");
        }

        // A set that is to be read again is no standing and makes no trend, unless there is no other.
        if (sets.Where(s => s.Findings.All(f => f.Severity != FindingSeverity.Reject)).ToList() is { Count: > 0 } believed)
        {
            sets = believed;
        }

        var latest = sets[^1];
        var trend = sets.Count > 1 && latest.Date.DayNumber - sets[^2].Date.DayNumber is > 0 and <= 21 and var days
            ? Trend((latest.Statistics.MeanMpa - sets[^2].Statistics.MeanMpa) / days)
            : Sentence.Empty;
        var below = latest.Statistics.MeanMpa < limits.FloorMpa[0] ? Sentence.Of($", under its floor of {Wording.Tension(limits.FloorMpa[0])}") : Sentence.Empty;
        return Sentence.Of($"{Wording.Tension(latest.Statistics.MeanMpa)} on {latest.Date:d MMM}{trend}{below}");
    }

    private static Sentence Trend(double mpaPerDay) => mpaPerDay switch
    {
        > 0.01 => Sentence.Of($", rising {Wording.BareTension(mpaPerDay)} a day"),
        < -0.01 => Sentence.Of($", falling {Wording.BareTension(-mpaPerDay)} a day"),
        _ => ", steady",
    };
}
