using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Features.Soil;
using EstateWater.Web.Parts.Drawing;

namespace EstateWater.Web.Features.Report;

/// <summary>Half a page: one block.</summary>
public sealed record BlockReport
{
    /// <summary>The block, its class and its plan.</summary>
    public required BlockRow Row { get; init; }

    /// <summary>The latest sets, the latest first.</summary>
    public required IReadOnlyList<ReadAgainstTarget> Sets { get; init; }

    /// <summary>The stage seen last; null when none was this season.</summary>
    public StageObservation? Stage { get; init; }

    /// <summary>Its tubes.</summary>
    public required IReadOnlyList<TubeSeries> Tubes { get; init; }

    /// <summary>Weather of its station.</summary>
    public required StationWeek Weather { get; init; }

    /// <summary>What went through its valve.</summary>
    public required ValveWeek Water { get; init; }

    /// <summary>Water put on this season, by hours and declared flow. [mm]</summary>
    public required double SeasonAppliedMm { get; init; }

    /// <summary>Rain this season; null where none was measured. [mm]</summary>
    public double? SeasonRainMm { get; init; }

    /// <summary>First day of the season.</summary>
    public required DateOnly SeasonStart { get; init; }

    /// <summary>Sets of its valve in the plan.</summary>
    public required IReadOnlyList<PlannedSet> Planned { get; init; }

    /// <summary>What does not fit; null when everything it needs is planned.</summary>
    public UnmetNeed? Unmet { get; init; }

    /// <summary>The latest look at its canopy; null when nobody looked.</summary>
    public CanopyVisit? Canopy { get; init; }

    /// <summary>What people wrote down at the latest set, and at the valve in the past week.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Tension, on the axis that all blocks of the same measure share. [bar]</summary>
    public required LinearScale TensionBar { get; init; }

    /// <summary>Heat ahead at its station.</summary>
    public required IReadOnlyList<PlannedHeatSpell> Heat { get; init; }

    /// <summary>Name of its place on the page.</summary>
    public string Anchor => AnchorOf(Row.Block.Code);

    /// <summary>Name of a block's place on the page.</summary>
    public static string AnchorOf(string code) => "block-" + Uri.EscapeDataString(code);
}
