using System.Globalization;
using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.Units;
using static EstateWater.Agronomy.WaterStatus.WateringLean;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>What practice says of a block: reasons to water it, to leave it, or to do something else first.</summary>
/// <remarks>Order of trust: a vine read in its window, then the soil's trend, then what eyes see, then a model. A reading sets the time, not the amount.</remarks>
[Method(
    "Reasons to water or to withhold",
    Source = "Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 267 (order of trust); Australian Wine Research Institute, eBulletin December 2024 (water before heat); fifteen days without water before harvest as in Cancela et al. (2016); the combination and its numbers are ours",
    Check = "Each rule by a hand-made block; no publication gives numbers for the combination")]
public static class WateringRules
{
    /// <summary>No water in the last days before harvest. Two trials stopped fifteen days before. [d]</summary>
    public const int HarvestDays = 15;

    /// <summary>Last stage at which growing tips alone speak against water: fruit set.</summary>
    public const double FruitSetStage = GrowthStageCurve.FruitSetElStage;

    /// <summary>Tips count as growing hard from this index. Ours. [–]</summary>
    public const double VigorousTips = 0.8;

    /// <summary>Air in which leaves of any vine run dry. Ours. [kPa]</summary>
    public const double VeryDryAirKpa = 5;

    /// <summary>Emission uniformity under which the drip is mended first: ASAE EP458 "poor", from memory, to be checked. [–]</summary>
    public const double PoorUniformity = 0.7;

    /// <summary>Everything that practice has to say, in the order of trust.</summary>
    /// <param name="block">What is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value that cannot be.</exception>
    public static IReadOnlyList<WateringAdvice> Of(WateringEvidence block)
    {
        ArgumentNullException.ThrowIfNull(block);
        Validate(block);
        IEnumerable<WateringAdvice?> advice = [.. First(block), Vine(block), DryAir(block), .. Soil(block), .. Tips(block), Heat(block), Harvest(block)];
        return [.. advice.OfType<WateringAdvice>()];
    }

    /// <summary>Whether the reasons add up to water: two of vine, soil and tips, or one when heat is ahead or the vine is past its limit; not when rain will do it.</summary>
    /// <param name="advice">From <see cref="Of"/>.</param>
    public static bool SpeaksForWater(IReadOnlyList<WateringAdvice> advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        var rules = advice.Select(a => a.Rule).ToHashSet();
        var reasons = new[] { WateringRule.VineDry, WateringRule.SoilAtRefill, WateringRule.TipsSlow }.Count(rules.Contains);
        return rules.Contains(WateringRule.VinePastLimit)
            || (!rules.Contains(WateringRule.RainAhead) && reasons >= (rules.Contains(WateringRule.HeatAhead) ? 1 : 2));
    }

    private static IEnumerable<WateringAdvice?> First(WateringEvidence b) =>
    [
        b.ReadingRejected ? new(WateringRule.ReadAgain, WateringLean.First, "The last set failed its checks: read again before deciding.") : null,
        b.HoursSinceIrrigation < 24 ? new(WateringRule.Recovering, WateringLean.First, "Read within a day of water: the vine is still recovering.") : null,
        b.LeakKnown || b.EmissionUniformity < PoorUniformity
            ? new(WateringRule.RepairFirst, WateringLean.First, "Mend the drip first: what is put on does not come where it is wanted.")
            : null,
    ];

    private static WateringAdvice? Vine(WateringEvidence b)
    {
        if (b.ReadingRejected || b.TensionMpa is not { } tension)
        {
            return null;
        }

        if (tension > b.LimitMpa)
        {
            return new(WateringRule.VinePastLimit, Water, $"Vines at {Quantity.TensionOfMpa(tension)}, past {Quantity.TensionOfMpa(b.LimitMpa.Value)}, which they should never see.");
        }

        if (b.CeilingMpa is not { } ceiling)
        {
            return null;
        }

        return tension >= ceiling
            ? new(WateringRule.VineDry, Water, $"Vines at {Quantity.TensionOfMpa(tension)}; {Quantity.TensionOfMpa(ceiling)} is the driest wanted.")
            : tension + b.TensionHalfWidthMpa >= ceiling
                ? new(WateringRule.VineNearCeiling, WateringLean.First, $"Vines at {Quantity.TensionOfMpa(tension)}, give or take {Quantity.TensionOfMpa(b.TensionHalfWidthMpa!.Value)}: they may be at {Quantity.TensionOfMpa(ceiling)} already. More leaves would tell.")
                : null;
    }

    private static WateringAdvice? DryAir(WateringEvidence b) =>
        b.VpdKpa >= VeryDryAirKpa && b.TensionMpa >= b.CeilingMpa && b.DepletionMm < b.RefillDepletionMm && !b.HeatAhead
            ? new(WateringRule.DryAirOnly, Withhold, string.Create(CultureInfo.InvariantCulture, $"Leaves ran dry in very dry air ({b.VpdKpa:0.0} kPa) over soil that is not: read again on a milder day."))
            : null;

    private static IEnumerable<WateringAdvice?> Soil(WateringEvidence b) =>
    [
        b.DepletionMm >= b.RefillDepletionMm
            ? new(WateringRule.SoilAtRefill, Water, string.Create(CultureInfo.InvariantCulture, $"{b.DepletionMm:0} mm missing from the root zone; refill is at {b.RefillDepletionMm:0} mm."))
            : b.DepletionMm < 0.5 * b.RefillDepletionMm
                ? new(WateringRule.SoilNotAtRefill, Withhold, string.Create(CultureInfo.InvariantCulture, $"The soil still holds enough: {b.DepletionMm:0} mm missing, refill at {b.RefillDepletionMm:0} mm."))
                : null,
        b.RainAheadMm > b.DepletionMm && b.RainAheadMm > 0
            ? new(WateringRule.RainAhead, Withhold, string.Create(CultureInfo.InvariantCulture, $"{b.RainAheadMm:0} mm of rain expected for {b.DepletionMm:0} mm missing: let it."))
            : null,
    ];

    private static IEnumerable<WateringAdvice?> Tips(WateringEvidence b) =>
    [
        b.TipIndex < b.TipIndexWanted ? new(WateringRule.TipsSlow, Water, "Tips have slowed more than wanted at this stage.") : null,
        b.TipIndex >= VigorousTips && b.ElStage <= FruitSetStage && !(b.TensionMpa >= b.CeilingMpa) && !b.HeatAhead
            ? new(WateringRule.TipsVigorousEarly, Withhold, "Tips grow hard before set and nothing is short: water would only make more canopy.")
            : null,
    ];

    private static WateringAdvice? Heat(WateringEvidence b) => b.HeatAhead
        ? new(WateringRule.HeatAhead, Water, "Heat is coming: fill the wetted root zone some days ahead, in the evening or early morning, and go on afterwards.")
        : null;

    private static WateringAdvice? Harvest(WateringEvidence b) =>
        b.DaysToHarvest is >= 0 and <= HarvestDays && !b.HeatAhead && !(b.TensionMpa > b.LimitMpa)
            ? new(WateringRule.HarvestNear, Withhold, string.Create(CultureInfo.InvariantCulture, $"{b.DaysToHarvest} days to harvest: leave it dry unless heat comes or vines pass their limit."))
            : null;

    private static void Validate(WateringEvidence b)
    {
        Optional(b.TensionMpa, 0, 10, "MPa of tension", nameof(b.TensionMpa));
        Optional(b.TensionHalfWidthMpa, 0, 10, "MPa", nameof(b.TensionHalfWidthMpa));
        Optional(b.CeilingMpa, 0, 10, "MPa of tension", nameof(b.CeilingMpa));
        Optional(b.LimitMpa, 0, 10, "MPa of tension", nameof(b.LimitMpa));
        Optional(b.VpdKpa, 0, 12, "kPa", nameof(b.VpdKpa));
        Optional(b.DepletionMm, 0, 5000, "mm", nameof(b.DepletionMm));
        Optional(b.RefillDepletionMm, 0, 5000, "mm", nameof(b.RefillDepletionMm));
        Optional(b.TipIndex, 0, 1, "(share)", nameof(b.TipIndex));
        Optional(b.TipIndexWanted, 0, 1, "(share)", nameof(b.TipIndexWanted));
        Optional(b.ElStage, 1, 47, "(modified Eichhorn–Lorenz)", nameof(b.ElStage));
        Optional(b.RainAheadMm, 0, 5000, "mm", nameof(b.RainAheadMm));
        Optional(b.EmissionUniformity, 0, 1, "(share)", nameof(b.EmissionUniformity));

        static void Optional(double? value, double lowest, double highest, string unit, string name)
        {
            if (value is { } known)
            {
                Require.InRange(known, lowest, highest, unit, name);
            }
        }
    }
}
