namespace EstateWater.Web.Access;

/// <summary>Tells when sessions, codes and invitations run out: the real time, also where the estate's clock stands still.</summary>
/// <param name="time">Its source.</param>
public sealed class SessionClock(TimeProvider time)
{
    /// <summary>Its source, for what takes one.</summary>
    public TimeProvider Time { get; } = time;

    /// <summary>The time now.</summary>
    public DateTimeOffset Now => Time.GetUtcNow();
}
