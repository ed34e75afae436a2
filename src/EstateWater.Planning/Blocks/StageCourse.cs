namespace EstateWater.Planning.Blocks;

/// <summary>Growth stage of a block day by day: observed where observed, a calendar between and beyond.</summary>
/// <remarks>The calendar is common practice for mid-latitude estates, no published source; one observation shifts it.</remarks>
internal sealed class StageCourse
{
    private static readonly (double Stage, int Day)[] Calendar =
        [(1, -40), (4, 0), (12, 25), (19, 60), (23, 67), (27, 77), (31, 90), (35, 128), (38, 172), (41, 195), (43, 215), (47, 240)];

    private readonly List<(int Day, double Stage)> observed;
    private readonly int budburst;

    public StageCourse(PlanBlock block, DateOnly seasonFirst, DateOnly asOf)
    {
        observed = [.. block.Stages
            .Where(s => s.Date >= seasonFirst && s.Date <= asOf)
            .GroupBy(s => s.Date.DayNumber)
            .Select(day => (day.Key, day.Max(s => s.ElStage)))
            .OrderBy(s => s.Key)];

        // 15 March in the north, 15 September in the south: 74 and 76 days after the season's first day.
        budburst = seasonFirst.DayNumber + (block.LatitudeDegrees < 0 ? 76 : 74);
    }

    /// <summary>Modified Eichhorn–Lorenz number on a day.</summary>
    public double At(DateOnly date)
    {
        var day = date.DayNumber;
        if (observed.Count == 0)
        {
            return StageAfter(day - budburst);
        }

        var next = observed.FindIndex(s => s.Day >= day);
        if (next == 0)
        {
            return StageAfter(DaysTo(observed[0].Stage) - (observed[0].Day - day));
        }

        if (next < 0)
        {
            var (lastDay, lastStage) = observed[^1];
            return Math.Max(lastStage, StageAfter(DaysTo(lastStage) + (day - lastDay)));
        }

        // Between two observations the calendar keeps its shape and is stretched to meet both.
        var (fromDay, fromStage) = observed[next - 1];
        var (toDay, toStage) = observed[next];
        var share = (day - fromDay) / (double)(toDay - fromDay);
        return StageAfter(DaysTo(fromStage) + (share * (DaysTo(toStage) - DaysTo(fromStage))));
    }

    private static double StageAfter(double days) => Interpolate(days, point => point.Day, point => point.Stage);

    private static double DaysTo(double stage) => Interpolate(stage, point => point.Stage, point => point.Day);

    private static double Interpolate(double x, Func<(double Stage, int Day), double> from, Func<(double Stage, int Day), double> to)
    {
        for (var i = 1; i < Calendar.Length; i++)
        {
            if (x <= from(Calendar[i]) || i == Calendar.Length - 1)
            {
                var share = (x - from(Calendar[i - 1])) / (from(Calendar[i]) - from(Calendar[i - 1]));
                return to(Calendar[i - 1]) + (Math.Clamp(share, 0, 1) * (to(Calendar[i]) - to(Calendar[i - 1])));
            }
        }

        return to(Calendar[^1]);
    }
}
