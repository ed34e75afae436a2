namespace EstateWater.Planning.Rounds;

/// <summary>A block that may be read on the round.</summary>
/// <param name="Block">Its code.</param>
/// <param name="EastM">Place on a plane of the estate. [m]</param>
/// <param name="NorthM">Place on a plane of the estate. [m]</param>
/// <param name="Worth">What reading it is worth, 0 or more.</param>
/// <param name="MinutesThere">Reading it, once there. [min]</param>
public sealed record RoundCandidate(string Block, double EastM, double NorthM, double Worth, double MinutesThere);

/// <summary>Blocks in walking order.</summary>
/// <param name="Stops">In order.</param>
/// <param name="Minutes">Reading and walking between, first to last. [min]</param>
public sealed record RoundPath(IReadOnlyList<RoundCandidate> Stops, double Minutes)
{
    /// <summary>What it is worth together.</summary>
    public double Worth => Stops.Sum(s => s.Worth);
}
