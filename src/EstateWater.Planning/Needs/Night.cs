namespace EstateWater.Planning.Needs;

/// <summary>One opening of a source's daily window within the horizon.</summary>
/// <param name="Start">When it opens; never before the plan can be carried out.</param>
/// <param name="End">When it closes.</param>
/// <param name="WaterDay">Days after today whose evening the water counts for: 0 is tonight.</param>
/// <param name="Date">The day on which the window opens, also where the plan finds it open already.</param>
internal sealed record Night(DateTimeOffset Start, DateTimeOffset End, int WaterDay, DateOnly Date)
{
    // People need notice before a valve opens.
    private static readonly TimeSpan Notice = TimeSpan.FromHours(2);

    // A remnant of a window is not worth opening a valve for.
    private static readonly TimeSpan Shortest = TimeSpan.FromHours(4);

    /// <summary>Whole quarter hours in it.</summary>
    public int Quarters => (int)Math.Floor((End - Start).TotalMinutes / 15 + 1e-9);

    /// <summary>The windows of a source that open from now to the last evening that can still matter.</summary>
    public static IReadOnlyList<Night> Of(PlanSource source, DateTimeOffset asOf, TimeZoneInfo zone, DateOnly today, int horizonDays)
    {
        var nights = new List<Night>();
        var earliest = asOf + Notice;
        for (var day = -1; day <= horizonDays; day++)
        {
            var date = today.AddDays(day);
            var start = LocalTime(date, source.DailyFrom, zone);
            var end = LocalTime(source.DailyTo <= source.DailyFrom ? date.AddDays(1) : date, source.DailyTo, zone);
            var whole = end - start;
            if (start < earliest)
            {
                start = QuarterAtOrAfter(earliest, zone);
            }

            var waterDay = start.Hour < 12 ? DayOf(start) - today.DayNumber - 1 : DayOf(start) - today.DayNumber;
            if (end - start >= (whole < Shortest ? whole : Shortest) && waterDay < horizonDays)
            {
                nights.Add(new Night(start, end, Math.Max(0, waterDay), date));
            }
        }

        return nights;
    }

    private static int DayOf(DateTimeOffset instant) => DateOnly.FromDateTime(instant.DateTime).DayNumber;

    // A clock time that the spring change skips is taken an hour later.
    private static DateTimeOffset LocalTime(DateOnly date, TimeOnly time, TimeZoneInfo zone)
    {
        var local = date.ToDateTime(time);
        if (zone.IsInvalidTime(local))
        {
            local = local.AddHours(1);
        }

        return new DateTimeOffset(local, zone.GetUtcOffset(local));
    }

    private static DateTimeOffset QuarterAtOrAfter(DateTimeOffset instant, TimeZoneInfo zone)
    {
        const long quarter = TimeSpan.TicksPerMinute * 15;
        var ticks = (instant.UtcTicks + quarter - 1) / quarter * quarter;
        return TimeZoneInfo.ConvertTime(new DateTimeOffset(ticks, TimeSpan.Zero), zone);
    }
}
