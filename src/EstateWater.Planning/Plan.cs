using System.Text.Json.Serialization;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Planning;

/// <summary>The answer: which blocks get water, how many hours, on which night, and what follows. Serialises to the plan document.</summary>
public sealed record Plan
{
    /// <summary>The moment the plan looks from.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Days ahead.</summary>
    public required int HorizonDays { get; init; }

    /// <summary>Heat expected within the horizon.</summary>
    public required IReadOnlyList<PlannedHeatSpell> HeatSpells { get; init; }

    /// <summary>Every block, the most urgent first.</summary>
    public required IReadOnlyList<BlockPlan> Blocks { get; init; }

    /// <summary>Sets in order of start, then valve.</summary>
    public required IReadOnlyList<PlannedSet> Sets { get; init; }

    /// <summary>What was wanted and does not fit.</summary>
    public required IReadOnlyList<UnmetNeed> Unmet { get; init; }

    /// <summary>Hours of sets that do not fit: blocks on one valve miss the same hours. Not part of the document. [h]</summary>
    [JsonIgnore]
    public double UnmetSetHours => Unmet.DistinctBy(u => u.Valve ?? u.Block).Sum(u => u.Hours);

    /// <summary>Water by source.</summary>
    public required IReadOnlyList<SourceWater> Water { get; init; }

    /// <summary>How far the packing may be from the best possible.</summary>
    public required PackingQuality Packing { get; init; }

    /// <summary>Hours by hand and other changes it keeps to, in words; null when there are none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? ChangesByHand { get; init; }
}

/// <summary>Heat ahead at a station.</summary>
/// <param name="Station">Its code.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="PeakTMaxC">Hottest day. [°C]</param>
public sealed record PlannedHeatSpell(string Station, DateOnly From, DateOnly To, double PeakTMaxC);

/// <summary>One block in the plan.</summary>
public sealed record BlockPlan
{
    /// <summary>The block's code.</summary>
    public required string Block { get; init; }

    /// <summary>1 is the most urgent.</summary>
    public required int Rank { get; init; }

    /// <summary>The measure its target uses.</summary>
    public required WaterPotentialMeasure Measure { get; init; }

    /// <summary>Wettest tension wanted now. [bar]</summary>
    public required double FloorBar { get; init; }

    /// <summary>Driest tension wanted now. [bar]</summary>
    public required double CeilingBar { get; init; }

    /// <summary>The latest reading set; null where none exists.</summary>
    public LatestReadingSet? Latest { get; init; }

    /// <summary>A day each, from the day of as-of through the horizon.</summary>
    public required IReadOnlyList<OutlookDay> Outlook { get; init; }

    /// <summary>Whole quarter hours planned; 0 for none. [h]</summary>
    public required double Hours { get; init; }

    /// <summary>Water reaching the root zone from them, over the block's area. [mm]</summary>
    public required double NetMm { get; init; }

    /// <summary>Water used. [m³]</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>What, how much, by when, because.</summary>
    public required Sentence Reason { get; init; }

    /// <summary>The chance of passing the ceiling by day of the outlook, with the sets as planned. Not part of the document.</summary>
    [JsonIgnore]
    public IReadOnlyList<DayRisk> Risks { get; init; } = [];
}

/// <summary>The chance of passing the ceiling on a day.</summary>
/// <param name="Date">The day.</param>
/// <param name="ChancePastCeiling">0–1; 0 without leaves.</param>
/// <param name="InHeat">Whether the day lies in a heat spell of the block's station.</param>
public sealed record DayRisk(DateOnly Date, double ChancePastCeiling, bool InHeat);

/// <summary>The latest reading set of a block.</summary>
public sealed record LatestReadingSet
{
    /// <summary>When its first leaf was read.</summary>
    public required DateTimeOffset TakenAt { get; init; }

    /// <summary>Mean tension. [bar]</summary>
    public required double MeanBar { get; init; }

    /// <summary>Standard error of the mean; null for a single leaf. [bar]</summary>
    public double? StandardErrorBar { get; init; }

    /// <summary>Leaves in the set.</summary>
    public required int Leaves { get; init; }

    /// <summary>Stress class in words.</summary>
    public required string StressClass { get; init; }

    /// <summary>What is doubtful about it, in words; empty when nothing is.</summary>
    public required IReadOnlyList<Sentence> Checks { get; init; }
}

/// <summary>What is expected of a day.</summary>
/// <param name="Date">The day.</param>
/// <param name="UnwateredBar">If nothing more is applied. [bar]</param>
/// <param name="PlannedBar">With the sets as planned. [bar]</param>
public sealed record OutlookDay(DateOnly Date, TensionBand UnwateredBar, TensionBand PlannedBar);

/// <summary>A band of tension. [bar]</summary>
/// <param name="P10">One in ten is wetter.</param>
/// <param name="P50">The middle.</param>
/// <param name="P90">One in ten is drier.</param>
public sealed record TensionBand(double P10, double P50, double P90);

/// <summary>A valve, open from then till then.</summary>
public sealed record PlannedSet
{
    /// <summary>The valve's code.</summary>
    public required string Valve { get; init; }

    /// <summary>The source's code.</summary>
    public required string Source { get; init; }

    /// <summary>Opens, estate time.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>Closes, estate time.</summary>
    public required DateTimeOffset End { get; init; }

    /// <summary>Whole quarter hours. [h]</summary>
    public required double Hours { get; init; }

    /// <summary>Flow while open. [m³/h]</summary>
    [JsonPropertyName("flow_m3_per_h")]
    public required double FlowM3PerH { get; init; }

    /// <summary>Water used. [m³]</summary>
    [JsonPropertyName("volume_m3")]
    public required double VolumeM3 { get; init; }
}

/// <summary>Hours wanted that do not fit.</summary>
/// <param name="Block">The block's code.</param>
/// <param name="Hours">Missing hours. [h]</param>
/// <param name="Reason">Why they do not fit.</param>
public sealed record UnmetNeed(string Block, double Hours, Sentence Reason)
{
    /// <summary>The block's valve; null where a plan was read from its document, which does not hold it.</summary>
    [JsonIgnore]
    public string? Valve { get; init; }
}

/// <summary>Water of a source.</summary>
/// <param name="Source">Its code.</param>
/// <param name="PlannedM3">Used by this plan. [m³]</param>
/// <param name="LeftM3">Left of the season's allocation after it; null when unlimited. [m³]</param>
public sealed record SourceWater(
    string Source,
    [property: JsonPropertyName("planned_m3")] double PlannedM3,
    [property: JsonPropertyName("left_m3")] double? LeftM3)
{
    /// <summary>The rest of the season; null where the source has no allocation. No part of the plan document.</summary>
    [JsonIgnore]
    public SeasonWater? Season { get; init; }
}

/// <summary>How a source's allocation is expected to last.</summary>
/// <param name="WantedM3">What the rest of the season would use from today on, were water not short. [m³]</param>
/// <param name="ExpectedM3">What it is expected to use at the price; no more than is left. [m³]</param>
/// <param name="KeptForRipeningM3">Of what this plan leaves, the part expected to be put on between veraison and harvest. [m³]</param>
/// <param name="PricePerMm">Trouble that a millimetre over a hectare must spare to be put on now; 0 when water is not short. [1/(mm ha)]</param>
/// <param name="Words">The same in a sentence.</param>
public sealed record SeasonWater(double WantedM3, double ExpectedM3, double KeptForRipeningM3, double PricePerMm, Sentence Words)
{
    /// <summary>Whether less is left than the rest of the season would use.</summary>
    public bool IsShort { get; init; }
}

/// <summary>How good the packing is, as the solver proved it.</summary>
/// <param name="Objective">Value of the packing found, as laid on the clock.</param>
/// <param name="Bound">No packing can be worth more than this.</param>
/// <param name="GapPct">100 · (bound − objective) ∕ bound. [%]</param>
/// <param name="Optimal">Whether it is proven best.</param>
/// <param name="CutBackPct">Share of the bound that sets gave up afterwards on purpose: hours that help no more in the night they got. [%]</param>
public sealed record PackingQuality(double Objective, double Bound, double GapPct, bool Optimal, double CutBackPct = 0);
