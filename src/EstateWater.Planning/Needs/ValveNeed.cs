using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Needs;

/// <summary>The quarter hours a valve should open, and the nights that suit best.</summary>
internal sealed record ValveNeed
{
    public required ValveWater Valve { get; init; }

    public required IReadOnlyList<BlockCourse> Courses { get; init; }

    /// <summary>Quarter hours by night of the source.</summary>
    public required int[] QuartersByNight { get; init; }

    /// <summary>How much of its good a set does in each night, 0–1: 1 in the best.</summary>
    public required IReadOnlyList<double> NightShare { get; init; }

    /// <summary>Trouble spared by each further piece of <see cref="PieceQuarters"/>, all blocks, by hectares and priority; never rising.</summary>
    public required IReadOnlyList<double> WorthByPiece { get; init; }

    /// <summary>Quarter hours in a piece.</summary>
    public const int PieceQuarters = 4;

    /// <summary>Whether the hours were set by hand.</summary>
    public bool ByHand { get; init; }

    /// <summary>Quarter hours that are left out because water is short this season.</summary>
    public int ForgoneQuarters { get; init; }

    /// <summary>Places in the source's list of nights in which the valve cannot open.</summary>
    public IReadOnlySet<int> LostNights { get; init; } = new HashSet<int>();

    /// <summary>Quarter hours it would want were no night lost to it; never fewer than <see cref="Quarters"/>.</summary>
    public int WantedQuarters { get => Math.Max(field, Quarters); init; }

    /// <summary>About as often as it wants to open.</summary>
    public int MostOpenings => QuartersByNight.Count(q => q > 0) + 1;

    public int Quarters => QuartersByNight.Sum();

    /// <summary>Trouble spared by hours by hand in the nights that suit them best; <see cref="WorthByPiece"/> only says that they must be.</summary>
    public double SparedByHand { get; init; }

    /// <summary>What a quarter hour spares: how much it matters in which night it is given.</summary>
    public double SparedPerQuarter => !ByHand ? WorthPerQuarter : Quarters == 0 ? 0 : SparedByHand / Quarters;

    /// <summary>Mean worth of a quarter hour.</summary>
    public double WorthPerQuarter => Quarters == 0 ? 0 : WorthByPiece.Sum() / Quarters;
}
