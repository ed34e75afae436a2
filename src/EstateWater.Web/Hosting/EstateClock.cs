namespace EstateWater.Web.Hosting;

/// <summary>The estate's time: real or standing still, and always in the estate's zone.</summary>
/// <param name="fixedAt">The instant at which it stands; null for the real time.</param>
public sealed class EstateClock(DateTimeOffset? fixedAt = null) : TimeProvider
{
    private TimeZoneInfo zone = TimeZoneInfo.Utc;

    /// <summary>The instant at which the clock stands; null when it runs.</summary>
    public DateTimeOffset? FixedAt { get; } = fixedAt;

    /// <summary>The estate's zone; UTC until an estate is known.</summary>
    public override TimeZoneInfo LocalTimeZone => zone;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => FixedAt?.ToUniversalTime() ?? System.GetUtcNow();

    /// <summary>The day it is on the estate.</summary>
    public DateOnly Today => DateOnly.FromDateTime(GetLocalNow().DateTime);

    /// <summary>Takes the zone of the estate that is shown.</summary>
    public void UseZone(TimeZoneInfo estateZone) => zone = estateZone;
}
