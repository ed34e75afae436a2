using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Phenology;

/// <summary>The stages of the modified Eichhorn–Lorenz system, by number.</summary>
[Method("Growth stages, modified Eichhorn–Lorenz", Source = "Coombe (1995), Aust. J. Grape Wine Res. 1: 104–110; revised Coombe & Dry (2004). Wording shortened, to be checked", Check = "Order and span of the list")]
public static class GrowthStages
{
    /// <summary>Lowest number: winter bud.</summary>
    public const double First = 1;

    /// <summary>Highest number: end of leaf fall.</summary>
    public const double Last = 47;

    /// <summary>Numbers with their names, ascending.</summary>
    public static IReadOnlyList<(int ElStage, string Name)> All { get; } =
    [
        (1, "Winter bud"), (2, "Bud scales opening"), (3, "Wool bud"), (4, "Budburst"), (5, "Rosette of leaf tips"),
        (7, "First leaf separated"), (9, "2–3 leaves separated"), (11, "Four leaves separated"), (12, "Five leaves separated, shoots 10 cm"),
        (15, "Eight leaves separated"), (17, "Twelve leaves separated"), (18, "Fourteen leaves, caps fading"), (19, "Flowering begins"),
        (20, "10 % caps off"), (21, "30 % caps off"), (23, "Full bloom"), (25, "80 % caps off"), (26, "Cap-fall complete"),
        (27, "Setting"), (29, "Peppercorn-size berries"), (31, "Pea-size berries"), (32, "Bunch closure begins"), (33, "Hard green berries"),
        (34, "Berries soften"), (35, "Veraison"), (36, "Intermediate sugar"), (37, "Not quite ripe"), (38, "Harvest-ripe"),
        (39, "Over-ripe"), (41, "After harvest"), (43, "Leaf fall begins"), (47, "Leaf fall ends"),
    ];

    /// <summary>Name of the stage a number has reached.</summary>
    /// <param name="elStage">1 to 47; between two stages the earlier one is named.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1 to 47, or not a number.</exception>
    public static string NameOf(double elStage)
    {
        Require.InRange(elStage, First, Last, "as modified E-L number");
        return All.Last(stage => stage.ElStage <= elStage).Name;
    }
}
