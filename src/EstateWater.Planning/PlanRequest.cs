using EstateWater.Agronomy.WaterStatus;
using EstateWater.Agronomy.Weather;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Planning;

/// <summary>Everything the planner may know at one moment. Nothing in it is dated after <see cref="AsOf"/> but forecasts issued before it.</summary>
public sealed record PlanRequest
{
    /// <summary>The moment the plan looks from.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>The estate's time zone.</summary>
    public required TimeZoneInfo TimeZone { get; init; }

    /// <summary>The estate's day at <see cref="AsOf"/>.</summary>
    public DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(AsOf, TimeZone).DateTime);

    /// <summary>Days ahead, counted after the day of <see cref="AsOf"/>; 1 to 30.</summary>
    public int HorizonDays { get; init; } = 10;

    /// <summary>Weather stations with their days and forecasts.</summary>
    public required IReadOnlyList<PlanStation> Stations { get; init; }

    /// <summary>Water sources.</summary>
    public required IReadOnlyList<PlanSource> Sources { get; init; }

    /// <summary>Valves with the water applied through them.</summary>
    public required IReadOnlyList<PlanValve> Valves { get; init; }

    /// <summary>Blocks with what was observed in them.</summary>
    public required IReadOnlyList<PlanBlock> Blocks { get; init; }

    /// <summary>Hours fixed by hand, by block; these are planned as they are. [h]</summary>
    public IReadOnlyDictionary<string, double> HoursByHand { get; init; } = new Dictionary<string, double>();

    /// <summary>What the plan keeps to beside: closed valves, sources that are out, sets put in their place.</summary>
    public IReadOnlyList<PlanChange> Changes { get; init; } = [];

    /// <summary>Sets that were published and have not begun; empty where nothing was. They stay while a fresh plan would spare little more, so that people who were told do not see their week turned over by one reading.</summary>
    public IReadOnlyList<StandingSet> Standing { get; init; } = [];
}

/// <summary>A set that people were told of.</summary>
/// <param name="ValveCode">The valve.</param>
/// <param name="Start">When it opens.</param>
/// <param name="Hours">How long. [h]</param>
public sealed record StandingSet(string ValveCode, DateTimeOffset Start, double Hours);

/// <summary>A weather station, its past and the forecasts issued for it.</summary>
/// <param name="Code">Unique code.</param>
/// <param name="Site">Where it stands.</param>
/// <param name="Days">Measured days, each once, in date order.</param>
/// <param name="Forecasts">Forecasts, in order of issue.</param>
public sealed record PlanStation(string Code, StationSite Site, IReadOnlyList<DailyWeather> Days, IReadOnlyList<IssuedForecast> Forecasts);

/// <summary>One forecast as it was issued.</summary>
/// <param name="IssuedAt">When.</param>
/// <param name="Member">Ensemble member; <see langword="null"/> for a single forecast.</param>
/// <param name="Days">In date order.</param>
public sealed record IssuedForecast(DateTimeOffset IssuedAt, string? Member, IReadOnlyList<DailyWeather> Days)
{
    /// <summary>Days from the local day of issue to a day. [d]</summary>
    /// <param name="date">The day.</param>
    public int LeadDays(DateOnly date) => date.DayNumber - DateOnly.FromDateTime(IssuedAt.DateTime).DayNumber;
}

/// <summary>A water source.</summary>
/// <param name="Code">Unique code.</param>
/// <param name="MaxFlowM3PerH">Greatest flow. [m³/h]</param>
/// <param name="DailyFrom">Start of its daily window, local clock.</param>
/// <param name="DailyTo">End of its daily window; at or before the start means past midnight.</param>
/// <param name="SeasonAllocationM3">Water for one season; null when unlimited. [m³]</param>
public sealed record PlanSource(string Code, double MaxFlowM3PerH, TimeOnly DailyFrom, TimeOnly DailyTo, double? SeasonAllocationM3);

/// <summary>A valve that opens as one.</summary>
/// <param name="Code">Unique code.</param>
/// <param name="SourceCode">The source that feeds it.</param>
/// <param name="Applied">Water applied through it so far, in time order.</param>
public sealed record PlanValve(string Code, string SourceCode, IReadOnlyList<AppliedSet> Applied);

/// <summary>Water that was applied.</summary>
/// <param name="StartedAt">When the valve opened.</param>
/// <param name="Hours">How long. [h]</param>
/// <param name="MeterM3">What the meter showed; null when not read. [m³]</param>
public sealed record AppliedSet(DateTimeOffset StartedAt, double Hours, double? MeterM3);

/// <summary>A block, its properties as declared, and what was observed.</summary>
public sealed record PlanBlock
{
    /// <summary>Unique code.</summary>
    public required string Code { get; init; }

    /// <summary>The weather station it follows.</summary>
    public required string StationCode { get; init; }

    /// <summary>The valve that waters it.</summary>
    public required string ValveCode { get; init; }

    /// <summary>Whether the fruit is white.</summary>
    public required bool IsWhite { get; init; }

    /// <summary>Longitude of its middle, east positive. [degrees]</summary>
    public required double LongitudeDegrees { get; init; }

    /// <summary>Latitude of its middle, north positive. [degrees]</summary>
    public required double LatitudeDegrees { get; init; }

    /// <summary>Area. [m²]</summary>
    public required double AreaM2 { get; init; }

    /// <summary>Between rows. [m]</summary>
    public required double RowSpacingM { get; init; }

    /// <summary>Between vines. [m]</summary>
    public required double VineSpacingM { get; init; }

    /// <summary>Emitters at each vine.</summary>
    public required double EmittersPerVine { get; init; }

    /// <summary>Flow of one emitter. [L/h]</summary>
    public required double EmitterFlowLPerH { get; init; }

    /// <summary>Emission uniformity, 0–1; null when not measured.</summary>
    public double? EmissionUniformity { get; init; }

    /// <summary>Depth of the root zone. [m]</summary>
    public required double RootDepthM { get; init; }

    /// <summary>Water the soil holds for the vine. [mm/m]</summary>
    public required double AvailableWaterMmPerM { get; init; }

    /// <summary>Share of the root zone the drippers wet, 0–1; null when not known.</summary>
    public double? WettedFraction { get; init; }

    /// <summary>Share of the ground shaded at solar noon under full canopy, 0–1; null when not known.</summary>
    public double? ShadedFraction { get; init; }

    /// <summary>1 lowest to 5 highest.</summary>
    public int Priority { get; init; } = 3;

    /// <summary>Observed growth stages, in date order.</summary>
    public IReadOnlyList<ObservedStage> Stages { get; init; } = [];

    /// <summary>The targets that hold for this block, already resolved from the estate's list.</summary>
    public IReadOnlyList<StageTarget> Targets { get; init; } = [];

    /// <summary>Leaves read, in time order.</summary>
    public IReadOnlyList<LeafReading> Readings { get; init; } = [];

    /// <summary>Soil water profiles read, in date order.</summary>
    public IReadOnlyList<SoilProfile> SoilProfiles { get; init; } = [];

    /// <summary>Canopy visits, in date order.</summary>
    public IReadOnlyList<CanopyLook> CanopyLooks { get; init; } = [];
}

/// <summary>An observed growth stage.</summary>
/// <param name="Date">The day.</param>
/// <param name="ElStage">Modified Eichhorn–Lorenz number, 1–47.</param>
public sealed record ObservedStage(DateOnly Date, double ElStage);

/// <summary>The tension wanted between two growth stages.</summary>
/// <param name="FromElStage">First stage.</param>
/// <param name="ToElStage">Stage at which it ends.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="FloorBar">Wettest tension wanted. [bar, positive]</param>
/// <param name="CeilingBar">Driest tension wanted. [bar, positive]</param>
public sealed record StageTarget(double FromElStage, double ToElStage, WaterPotentialMeasure Measure, double FloorBar, double CeilingBar);

/// <summary>One leaf in the chamber.</summary>
/// <param name="TakenAt">When.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="TensionBar">Balancing pressure. [bar, positive]</param>
/// <param name="Group">Group of vines along the block.</param>
/// <param name="Vine">The vine.</param>
/// <param name="Exposure">Sun or shade; null when not noted.</param>
/// <param name="BaggedMin">Minutes in the bag. [min]</param>
/// <param name="DelayS">From cut to chamber. [s]</param>
public sealed record LeafReading(
    DateTimeOffset TakenAt,
    WaterPotentialMeasure Measure,
    double TensionBar,
    string? Group = null,
    string? Vine = null,
    LeafExposure? Exposure = null,
    double? BaggedMin = null,
    double? DelayS = null);

/// <summary>A tube's water content by depth on one day.</summary>
/// <param name="Date">The day.</param>
/// <param name="Tube">Which tube.</param>
/// <param name="Depths">From the top down.</param>
public sealed record SoilProfile(DateOnly Date, string Tube, IReadOnlyList<DepthWater> Depths);

/// <summary>Water content at a depth.</summary>
/// <param name="DepthM">Below the surface. [m]</param>
/// <param name="WaterContentM3PerM3">Volumetric water content. [m³/m³]</param>
public sealed record DepthWater(double DepthM, double WaterContentM3PerM3);

/// <summary>A canopy visit.</summary>
/// <param name="Date">The day.</param>
/// <param name="ShootLengthCm">[cm]</param>
/// <param name="ShadedFraction">0–1.</param>
/// <param name="GrowingTipsPct">[%]</param>
/// <param name="VisualStress">0 none to 3 leaves yellowing or lost.</param>
public sealed record CanopyLook(DateOnly Date, double? ShootLengthCm, double? ShadedFraction, double? GrowingTipsPct, int? VisualStress);
