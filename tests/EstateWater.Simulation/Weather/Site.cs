namespace EstateWater.Simulation.Weather;

/// <summary>Where the estate lies and which clock it keeps.</summary>
public sealed record Site(double LatitudeDegrees, double LongitudeDegrees, double ElevationM, TimeZoneInfo TimeZone)
{
    /// <summary>Whether high summer is in January.</summary>
    public bool IsSouthern => LatitudeDegrees < 0;

    /// <summary>An instant of the estate's clock.</summary>
    public DateTimeOffset At(DateOnly date, double hours)
    {
        var local = date.ToDateTime(TimeOnly.MinValue).AddMinutes(Math.Round(hours * 60));
        return new DateTimeOffset(local, TimeZone.GetUtcOffset(local));
    }

    /// <summary>Local clock time of solar noon. [h]</summary>
    public double SolarNoonHour(DateOnly date)
    {
        var offset = TimeZone.GetUtcOffset(date.ToDateTime(new TimeOnly(12, 0))).TotalHours;
        return 12 + offset - (LongitudeDegrees / 15) - (Sun.EquationOfTimeMinutes(date) / 60);
    }

    /// <summary>Years into a season that starts in mid-winter: 0 on the day of the winter solstice's month start.</summary>
    public int SeasonYear(DateOnly date) => IsSouthern && date.Month < 7 ? date.Year - 1 : date.Year;
}
