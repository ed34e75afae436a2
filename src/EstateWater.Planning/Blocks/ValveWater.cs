using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Statistics;

namespace EstateWater.Planning.Blocks;

/// <summary>What a valve delivers, by declaration and by its meter.</summary>
internal sealed class ValveWater
{
    private const int SetsThatShowTheMeter = 3;

    private readonly PlanValve valve;
    private readonly TimeZoneInfo zone;

    public ValveWater(PlanValve valve, IReadOnlyList<PlanBlock> blocks, TimeZoneInfo zone)
    {
        this.valve = valve;
        this.zone = zone;
        Blocks = [.. blocks.Where(b => b.ValveCode == valve.Code).OrderBy(b => b.Code, StringComparer.Ordinal)];
        FlowM3PerH = Blocks.Sum(FlowOf);
        var ratios = valve.Applied
            .Where(a => a is { MeterM3: not null, Hours: >= 0.5 } && FlowM3PerH > 0)
            .Select(a => a.MeterM3!.Value / (a.Hours * FlowM3PerH))
            .ToList();
        UsualMeterShare = ratios.Count == 0 ? null : Descriptive.Median(ratios);
        RecentMeterShare = ratios.Count == 0 ? null : Descriptive.Median([.. ratios.TakeLast(SetsThatShowTheMeter)]);
    }

    public string Code => valve.Code;

    public string SourceCode => valve.SourceCode;

    public IReadOnlyList<PlanBlock> Blocks { get; }

    /// <summary>All blocks together, as declared. [m³/h]</summary>
    public double FlowM3PerH { get; }

    /// <summary>Metered water over declared flow, all sets; null without a meter.</summary>
    public double? UsualMeterShare { get; }

    /// <summary>The same of the last three metered sets.</summary>
    public double? RecentMeterShare { get; }

    /// <summary>Share of the declared flow to count on in the coming days.</summary>
    public double ExpectedShare => RecentMeterShare ?? UsualMeterShare ?? 1;

    /// <summary>Water over a block's whole area in one hour, as declared. [mm/h]</summary>
    public static double RateMmPerH(PlanBlock block) =>
        DripLine.ApplicationRateMmPerH(block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);

    /// <summary>Water of all sets since a day. [m³]</summary>
    public double UsedM3Since(DateOnly first) =>
        valve.Applied.Where(a => WaterDay(a.StartedAt) >= first).Sum(a => a.MeterM3 ?? (a.Hours * FlowM3PerH * (UsualMeterShare ?? 1)));

    /// <summary>Hours of all sets since a day. [h]</summary>
    public double HoursSince(DateOnly first) => valve.Applied.Where(a => WaterDay(a.StartedAt) >= first).Sum(a => a.Hours);

    /// <summary>Water over the blocks' area, by the day in whose evening it was put on. [mm]</summary>
    public IReadOnlyDictionary<DateOnly, double> AppliedMm(PlanBlock block)
    {
        var rate = RateMmPerH(block);
        return valve.Applied
            .GroupBy(a => WaterDay(a.StartedAt))
            .ToDictionary(day => day.Key, day => day.Sum(a => rate * a.Hours * ShareOf(a)));
    }

    /// <summary>The day whose next solar noon first feels the water: a set begun before noon counts with the evening before.</summary>
    public DateOnly WaterDay(DateTimeOffset start)
    {
        var local = TimeZoneInfo.ConvertTime(start, zone);
        var day = DateOnly.FromDateTime(local.DateTime);
        return local.Hour < 12 ? day.AddDays(-1) : day;
    }

    private double ShareOf(AppliedSet set) => set.MeterM3 is { } metered && set.Hours > 0 && FlowM3PerH > 0
        ? metered / (set.Hours * FlowM3PerH)
        : UsualMeterShare ?? 1;

    private static double FlowOf(PlanBlock block) =>
        DripLine.BlockFlowM3PerH(block.AreaM2, block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);
}
