using System.Globalization;
using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Reasons;

/// <summary>Says of a block what, how much, by when, because.</summary>
internal static class BlockReason
{
    public static string Write(BlockOutcome outcome)
    {
        var parts = new List<string> { Decision(outcome) };
        if (Doubt(outcome.Course.State.Sets) is { } doubt)
        {
            parts.Add(doubt);
        }

        if (outcome.Course.State.Valve is { RecentMeterShare: { } share } valve && share < 1 - MeterCheck.LargeDifference)
        {
            parts.Add(Say($"Look at valve {valve.Code}: its last metered sets gave {share:P0} of what the hours should give."));
        }

        return string.Join(" ", parts);
    }

    private static string Decision(BlockOutcome outcome)
    {
        if (outcome.Quarters == 0 && !outcome.Course.Limits.HasLeaves[0])
        {
            return "Leave dry: without leaves, nothing to plan until budburst.";
        }

        var now = Standing(outcome);
        if (outcome.Quarters == 0)
        {
            return outcome.Need.WantedQuarters > 0
                ? $"No water fits, {Hours(outcome.Need.WantedQuarters)} wanted: {now}; {Without(outcome)}."
                : $"Leave dry: {now}; {Without(outcome)}.";
        }

        var last = outcome.Sets[^1].Night;
        var why = outcome.Course.FirstTrouble() is null && !outcome.Need.ByHand
            ? $"{now}; it shares valve {outcome.Need.Valve.Code} with a block that needs it"
            : $"{now}{HeatWords(outcome)}; {Without(outcome)}";
        var hand = outcome.Need.ByHand ? " (hours set by hand)" : string.Empty;
        var nights = outcome.Sets.Count == 1 ? "on the night of" : Say($"in {outcome.Sets.Count} sets by the night of");
        return Say($"Water {Hours(outcome.Quarters)}{hand} {nights} {last.Start:ddd d MMM}: {why}, with it {WateredPeak(outcome)}.{Sharing(outcome)}");
    }

    // A valve opens for all its blocks: what one of them can bear limits what another gets.
    private static string Sharing(BlockOutcome outcome)
    {
        var day = outcome.WorstDay;
        if (Descriptive.Median(outcome.Watered[day]) <= outcome.Course.Limits.CeilingMpa[day])
        {
            return string.Empty;
        }

        var wet = outcome.Need.Courses
            .Where(c => c != outcome.Course && c.Limits.FloorCounts[^1] && Descriptive.Median(c.Unwatered[^1]) < c.Limits.CeilingMpa[^1])
            .Select(c => c.State.Block.Code)
            .ToList();
        return wet.Count == 0 ? string.Empty : $" More would soak {string.Join(" and ", wet)} on the same valve.";
    }

    private static string Standing(BlockOutcome outcome)
    {
        var limits = outcome.Course.Limits;
        var sets = outcome.Course.State.Sets.Where(s => s.Measure == limits.Measure).ToList();
        if (outcome.Course.State.Sets.Count == 0)
        {
            return Say($"not read yet, planned from its soil, canopy and weather alone with a wide band, {Bar(Descriptive.Median(outcome.Course.Unwatered[0]))} expected today");
        }

        if (sets.Count == 0)
        {
            return Say($"never read in its target's measure, {Bar(Descriptive.Median(outcome.Course.Unwatered[0]))} expected today");
        }

        var latest = sets[^1];
        var trend = sets.Count > 1 && latest.Date.DayNumber - sets[^2].Date.DayNumber is > 0 and <= 21 and var days
            ? Trend((latest.Statistics.MeanMpa - sets[^2].Statistics.MeanMpa) / days)
            : string.Empty;
        var below = latest.Statistics.MeanMpa < limits.FloorMpa[0] ? Say($", under its floor of {Bar(limits.FloorMpa[0])}") : string.Empty;
        return Say($"{Bar(latest.Statistics.MeanMpa)} on {latest.Date:d MMM}{trend}{below}");
    }

    private static string Trend(double mpaPerDay) => mpaPerDay switch
    {
        > 0.01 => Say($", rising {mpaPerDay * Conversions.BarPerMegapascal:0.0} a day"),
        < -0.01 => Say($", falling {-mpaPerDay * Conversions.BarPerMegapascal:0.0} a day"),
        _ => ", steady",
    };

    private static string HeatWords(BlockOutcome outcome) => outcome.Heat.Count == 0
        ? string.Empty
        : Say($"; {outcome.Heat[0].PeakTMaxC:0} °C in the heat from {outcome.Heat[0].From:ddd d MMM}");

    private static string Without(BlockOutcome outcome)
    {
        var day = outcome.WorstDay;
        return Say($"without water {Bar(Descriptive.Median(outcome.Course.Unwatered[day]))} on {outcome.Today.AddDays(day):ddd d MMM} (ceiling {outcome.Course.Limits.CeilingMpa[day] * Conversions.BarPerMegapascal:0.#})");
    }

    private static string WateredPeak(BlockOutcome outcome)
    {
        var day = outcome.WorstDay;
        return Bar(Descriptive.Median(outcome.Watered[day]));
    }

    private static string? Doubt(IReadOnlyList<ReadingSet> sets)
    {
        if (sets.Count > 1 && sets[^1].Findings.Any(f => f.Code == ReadingCheck.Jump) && sets[^1].Statistics.MeanMpa > sets[^2].Statistics.MeanMpa)
        {
            return "It jumped: before more water, look whether what its valve gives reaches the vines, or read it again.";
        }

        if (sets.Count == 0 || !sets[^1].Findings.Any(f => f.Severity == FindingSeverity.Reject))
        {
            return null;
        }

        var worst = sets[^1].Findings.First(f => f.Severity == FindingSeverity.Reject);
        return $"Read it again: {worst.Words.TrimEnd('.')}.";
    }

    private static string Hours(int quarters) => Say($"{quarters / 4.0:0.##} h");

    private static string Bar(double mpa) => Say($"{mpa * Conversions.BarPerMegapascal:0.0} bar");

    private static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
