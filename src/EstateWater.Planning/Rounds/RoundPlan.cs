using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning.Rounds;

/// <summary>The round of readings of a day: which blocks, in walking order, when, and why.</summary>
public sealed record RoundPlan
{
    /// <summary>The estate's day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Leaves are read from here, by the sun. Estate time.</summary>
    public required DateTimeOffset WindowFrom { get; init; }

    /// <summary>To here.</summary>
    public required DateTimeOffset WindowTo { get; init; }

    /// <summary>When the sun stands highest.</summary>
    public required DateTimeOffset SolarNoon { get; init; }

    /// <summary>Blocks to read, in walking order.</summary>
    public required IReadOnlyList<RoundStop> Stops { get; init; }

    /// <summary>Blocks left out, what would be worth most first.</summary>
    public required IReadOnlyList<RoundRest> Rest { get; init; }

    /// <summary>How it is walked.</summary>
    public required RoundSettings Settings { get; init; }

    /// <summary>Blocks that the manager put in.</summary>
    public IReadOnlyList<string> Added { get; init; } = [];

    /// <summary>Blocks that the manager took out.</summary>
    public IReadOnlyList<string> Dropped { get; init; } = [];

    /// <summary>Minutes by which the round is longer than its window, for blocks that were put in; 0 when it fits. [min]</summary>
    public double MinutesOver => Stops.Count == 0 ? 0 : Math.Max(0, Math.Round((Stops[^1].To - WindowTo).TotalMinutes));
}

/// <summary>One block of a round.</summary>
public sealed record RoundStop
{
    /// <summary>Its code.</summary>
    public required string Block { get; init; }

    /// <summary>The measure of its target.</summary>
    public required WaterPotentialMeasure Measure { get; init; }

    /// <summary>Leaves to read for the precision wanted.</summary>
    public required int Leaves { get; init; }

    /// <summary>How far its leaves usually lie apart, standard deviation. [bar]</summary>
    public required double SpreadBar { get; init; }

    /// <summary>Where to be when. Estate time.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>When it is read.</summary>
    public required DateTimeOffset To { get; init; }

    /// <summary>Walked from the block before. [m]</summary>
    public required double WalkM { get; init; }

    /// <summary>Expected fall in trouble and water, by hectares and priority.</summary>
    public required double Worth { get; init; }

    /// <summary>Why it is read, in a sentence.</summary>
    public required Sentence Reason { get; init; }

    /// <summary>The facts behind the reason; null in rounds that were kept without them.</summary>
    public ReadingQuestion? Question { get; init; }
}

/// <summary>A block that the round leaves out.</summary>
/// <param name="Block">Its code.</param>
/// <param name="Worth">What reading it would be worth.</param>
/// <param name="Reason">Why it is left out, in a sentence.</param>
/// <param name="CanBeRead">Whether it could be put in.</param>
public sealed record RoundRest(string Block, double Worth, Sentence Reason, bool CanBeRead)
{
    /// <summary>The facts behind the reason; null in rounds that were kept without them.</summary>
    public ReadingQuestion? Question { get; init; }

    /// <summary>What keeps it from being read; null where nothing does, and in rounds that were kept without it.</summary>
    public ClosedToReading? Closed { get; init; }
}

/// <summary>What keeps a block from being read on a round.</summary>
public enum ClosedToReading
{
    /// <summary>Its target is predawn.</summary>
    Predawn,

    /// <summary>It has no leaves on the day.</summary>
    NoLeaves,

    /// <summary>It was read on the day.</summary>
    ReadAlready,
}
