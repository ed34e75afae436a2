using System.Security.Cryptography;

namespace EstateWater.Web.Access;

/// <summary>The code by which whoever started the program becomes its first manager. It stands at the console and works once.</summary>
/// <param name="clock">Tells when it has run out.</param>
public sealed class FirstStart(SessionClock clock)
{
    /// <summary>From when it was printed.</summary>
    public static readonly TimeSpan GoodFor = TimeSpan.FromHours(1);

    private readonly Lock gate = new();
    private byte[]? hash;
    private DateTimeOffset runsOutAt;

    /// <summary>A new code; an older one no longer works.</summary>
    public string Begin()
    {
        var code = OneTimeSecret.NewCode();
        lock (gate)
        {
            hash = OneTimeSecret.Hash(OneTimeSecret.Plain(code));
            runsOutAt = clock.Now + GoodFor;
        }

        return code;
    }

    /// <summary>Whether this is the code, and still good.</summary>
    public bool Accepts(string code)
    {
        lock (gate)
        {
            return hash is not null && clock.Now < runsOutAt && CryptographicOperations.FixedTimeEquals(hash, OneTimeSecret.Hash(OneTimeSecret.Plain(code)));
        }
    }

    /// <summary>Uses the code up; of two who use it at once one gets true.</summary>
    public bool TryUse(string code)
    {
        lock (gate)
        {
            if (!Accepts(code))
            {
                return false;
            }

            hash = null;
            return true;
        }
    }
}
