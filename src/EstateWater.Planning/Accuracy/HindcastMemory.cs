using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text.Json;

namespace EstateWater.Planning.Accuracy;

/// <summary>Keeps what past mornings gave, for as long as everything they were made from is the same: a new reading concerns the mornings before it alone.</summary>
public sealed class HindcastMemory
{
    private readonly ConcurrentDictionary<string, IReadOnlyList<HeldAgainst>> kept = new();

    /// <summary>Mornings that were learnt anew, not remembered.</summary>
    public int Learnt => learnt;

    private int learnt;

    internal IReadOnlyList<HeldAgainst> GetOrHold(HindcastMorning morning, PlanRequest then, CancellationToken cancellation)
    {
        var key = Fingerprint(morning, then);
        if (!kept.TryGetValue(key, out var held))
        {
            held = morning.Hold(then, cancellation);
            Interlocked.Increment(ref learnt);
            kept[key] = held;
        }

        return held;
    }

    private static string Fingerprint(HindcastMorning morning, PlanRequest then)
    {
        using var hash = SHA256.Create();
        using (var stream = new CryptoStream(Stream.Null, hash, CryptoStreamMode.Write))
        {
            JsonSerializer.Serialize(stream, new { morning, Zone = then.TimeZone.Id, then.HorizonDays, then.Stations, then.Valves, then.Blocks });
        }

        return Convert.ToHexString(hash.Hash!);
    }
}
