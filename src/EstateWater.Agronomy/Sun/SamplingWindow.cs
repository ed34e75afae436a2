using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Sun;

/// <summary>The midday hours in which leaves are read, bound to the sun and not to the clock.</summary>
/// <param name="From">Start. UTC.</param>
/// <param name="To">End. UTC.</param>
[Method("Midday sampling window about solar noon", Source = "Common practice, no published source: one hour before to one and a half after solar noon", Check = "Same elapsed length across clock changes; start one clock hour apart")]
public sealed record SamplingWindow(DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>Hours before solar noon unless set otherwise. [h]</summary>
    public const double DefaultHoursBefore = 1;

    /// <summary>Hours after solar noon unless set otherwise. [h]</summary>
    public const double DefaultHoursAfter = 1.5;

    /// <summary>The window of a day.</summary>
    /// <param name="day">The sun of the day.</param>
    /// <param name="hoursBefore">Before solar noon, 0 to 6. [h]</param>
    /// <param name="hoursAfter">After solar noon, 0 to 6. [h]</param>
    /// <remarks>On a summer-time clock with solar noon near 13:00 the default is about 12:00 to 14:30.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static SamplingWindow Of(SolarDay day, double hoursBefore = DefaultHoursBefore, double hoursAfter = DefaultHoursAfter)
    {
        ArgumentNullException.ThrowIfNull(day);
        return new SamplingWindow(
            day.Noon.AddHours(-Require.InRange(hoursBefore, 0, 6, "h")),
            day.Noon.AddHours(Require.InRange(hoursAfter, 0, 6, "h")));
    }

    /// <summary>Whether an instant lies within, ends included.</summary>
    /// <param name="instant">Any offset.</param>
    public bool Contains(DateTimeOffset instant) => instant >= From && instant <= To;
}
