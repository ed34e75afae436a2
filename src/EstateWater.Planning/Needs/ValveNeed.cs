using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Needs;

/// <summary>The quarter hours a valve should open, and the nights that suit best.</summary>
internal sealed record ValveNeed
{
    public required ValveWater Valve { get; init; }

    public required IReadOnlyList<BlockCourse> Courses { get; init; }

    /// <summary>Quarter hours by night of the source.</summary>
    public required int[] QuartersByNight { get; init; }

    /// <summary>Last night that comes before the trouble; later water helps less.</summary>
    public required int LastGoodNight { get; init; }

    /// <summary>Trouble spared by a quarter hour, all blocks, weighted by their areas and priorities.</summary>
    public required double WorthPerQuarter { get; init; }

    /// <summary>Whether the hours were set by hand.</summary>
    public bool ByHand { get; init; }

    public int Quarters => QuartersByNight.Sum();
}
