using EstateWater.Agronomy.Units;

namespace EstateWater.Planning.Reasons;

/// <summary>What a fact speaks of, in the order in which a reason tells them.</summary>
internal enum FactKind
{
    /// <summary>Where the block stands by its latest readings.</summary>
    Standing,

    /// <summary>What the soil's drying alone does.</summary>
    Drying,

    /// <summary>What heat does.</summary>
    Heat,

    /// <summary>Where it comes to without water, where nothing presses.</summary>
    Peak,

    /// <summary>How much it counts.</summary>
    Priority,

    /// <summary>Water is short this season.</summary>
    ShortSeason,

    /// <summary>The source's nights are full.</summary>
    NoRoom,

    /// <summary>Another block on its valve.</summary>
    Neighbour,
}

/// <summary>Something that decided about a block.</summary>
/// <param name="Kind">What it speaks of.</param>
/// <param name="WeightMpa">How far the tension of the worst day, or the water's part in it, would be another without it. [MPa]</param>
/// <param name="Words">The fact.</param>
internal sealed record Fact(FactKind Kind, double WeightMpa, Sentence Words);
