using EstateWater.Agronomy.Drip;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Report;

/// <summary>What went through a valve in the past week, beside what had been published for it.</summary>
/// <param name="Sets">Sets that were run.</param>
/// <param name="Hours">Their hours. [h]</param>
/// <param name="MeteredM3">What the meter showed for the sets it was read at; null when it was not read. [m³]</param>
/// <param name="ByFlowM3">What hours and declared flow give for the same sets. [m³]</param>
/// <param name="UnmeteredM3">By hours and declared flow, of sets without a meter reading. [m³]</param>
/// <param name="Planned">Sets that were published for the week and have ended; null when none was published for any valve.</param>
/// <param name="PlannedHours">Their hours. [h]</param>
public sealed record ValveWeek(int Sets, double Hours, double? MeteredM3, double ByFlowM3, double UnmeteredM3, int? Planned, double PlannedHours)
{
    /// <summary>How far back it looks. [d]</summary>
    public const int Days = 7;

    /// <summary>Water through the valve: by the meter, and by hours and flow where it was not read. [m³]</summary>
    public double AppliedM3 => (MeteredM3 ?? 0) + UnmeteredM3;

    /// <summary>The meter against hours and flow; null when it was not read.</summary>
    public MeterCheck? Meter => MeteredM3 is { } metered && ByFlowM3 > 0 ? new MeterCheck(ByFlowM3, metered) : null;

    /// <summary>Every valve of a snapshot.</summary>
    /// <param name="snapshot">The snapshot.</param>
    /// <param name="plans">Plans of the past weeks, those taken back too.</param>
    public static IReadOnlyDictionary<string, ValveWeek> All(EstateSnapshot snapshot, IReadOnlyList<PublishedPlan> plans)
    {
        var from = snapshot.AsOf.AddDays(-Days);
        var applied = snapshot.Contents.AppliedWaters.Where(set => set.StartedAt > from && set.StartedAt <= snapshot.AsOf).ToLookup(set => set.ValveCode);
        var published = SetLines.Standing(plans, snapshot.Contents).Where(line => line.Start > from && line.End <= snapshot.AsOf).ToLookup(line => line.Valve);
        var flow = snapshot.Contents.Blocks.GroupBy(block => block.ValveCode).ToDictionary(valve => valve.Key, valve => valve.Sum(FlowM3PerH));
        return snapshot.Contents.Valves.ToDictionary(
            valve => valve.Code,
            valve => Of([.. applied[valve.Code]], flow.GetValueOrDefault(valve.Code), published.Count > 0 ? [.. published[valve.Code]] : null));
    }

    /// <summary>Depth over the valve's blocks: a valve gives each of them its share by its own emitters. [mm]</summary>
    /// <param name="block">A block of the valve.</param>
    public double AppliedMm(Block block)
    {
        var byFlow = ByFlowM3 + UnmeteredM3;
        var rate = DripLine.ApplicationRateMmPerH(block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);
        return byFlow > 0 ? Hours * rate * AppliedM3 / byFlow : 0;
    }

    /// <summary>“6 h in two sets, published 6.5 h in two sets.”</summary>
    public string AgainstPlanned(UnitChoice units) => Planned switch
    {
        null => "No plan was published for these days.",
        0 when Sets == 0 => "None was published either.",
        0 => "None of it was published.",
        { } planned => $"Published: {units.Hours(PlannedHours)} in {SetsOf(planned)}{Difference(units)}.",
    };

    /// <summary>“6 h in two sets”, “no water”.</summary>
    public string AppliedWords(UnitChoice units) => Sets == 0 ? "no water" : $"{units.Hours(Hours)} in {SetsOf(Sets)}";

    private string Difference(UnitChoice units) => (Hours - PlannedHours) switch
    {
        > 0.001 and var more => $"; {units.Hours(more)} more was run",
        < -0.001 and var less => $"; {units.Hours(-less)} less was run",
        _ => "; run as published",
    };

    private static ValveWeek Of(IReadOnlyList<AppliedWater> applied, double flowM3PerH, IReadOnlyList<SetLine>? published)
    {
        var read = applied.Where(set => set.MeterM3 is not null).ToList();
        return new ValveWeek(
            applied.Count,
            applied.Sum(set => set.Hours),
            read.Count > 0 ? read.Sum(set => set.MeterM3!.Value) : null,
            read.Sum(set => set.Hours) * flowM3PerH,
            applied.Where(set => set.MeterM3 is null).Sum(set => set.Hours) * flowM3PerH,
            published?.Count,
            published?.Sum(line => line.Hours) ?? 0);
    }

    private static double FlowM3PerH(Block block) =>
        DripLine.BlockFlowM3PerH(block.AreaM2, block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);

    private static string SetsOf(int count) => count == 1 ? "one set" : $"{EstateText.Count(count)} sets";
}
