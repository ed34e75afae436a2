using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using WeekPlan = EstateWater.Planning.Plan;

namespace EstateWater.Tests.Web.Week;

/// <summary>A small plan of two blocks on one bore, as the planner would answer.</summary>
internal static class Samples
{
    public static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Africa/Johannesburg");

    public static readonly DateTimeOffset AsOf = new(2025, 1, 22, 6, 0, 0, TimeSpan.FromHours(2));

    public static readonly PlanSource Bore = new("bore", 100, new TimeOnly(20, 0), new TimeOnly(10, 0), 50_000);

    public static PlannedSet Set(string valve, int day, int hour, double hours, double flow = 30) => new()
    {
        Valve = valve,
        Source = "bore",
        Start = new DateTimeOffset(2025, 1, day, hour, 0, 0, TimeSpan.FromHours(2)),
        End = new DateTimeOffset(2025, 1, day, hour, 0, 0, TimeSpan.FromHours(2)).AddHours(hours),
        Hours = hours,
        FlowM3PerH = flow,
        VolumeM3 = hours * flow,
    };

    public static BlockPlan Block(string code, int rank, double hours) => new()
    {
        Block = code,
        Rank = rank,
        Measure = WaterPotentialMeasure.Leaf,
        FloorBar = 10,
        CeilingBar = 14,
        Latest = new LatestReadingSet
        {
            TakenAt = AsOf.AddDays(-2),
            MeanBar = 13.2,
            StandardErrorBar = 0.4,
            Leaves = 10,
            StressClass = "moderate",
            Checks = [],
        },
        Outlook =
        [
            new OutlookDay(new DateOnly(2025, 1, 22), new TensionBand(12.4, 13.3, 14.2), new TensionBand(12.4, 13.3, 14.2)),
            new OutlookDay(new DateOnly(2025, 1, 23), new TensionBand(13.1, 14.6, 16.0), new TensionBand(11.0, 12.1, 13.2)),
        ],
        Hours = hours,
        NetMm = hours * 1.5,
        VolumeM3 = hours * 30,
        Reason = $"Water {hours} h by Thursday night.",
    };

    public static WeekPlan Plan(double firstHours = 6, double secondHours = 4) => new()
    {
        AsOf = AsOf,
        HorizonDays = 10,
        HeatSpells = [],
        Blocks = [Block("B01", 1, firstHours), Block("B02", 2, secondHours)],
        Sets = [Set("V01", 22, 20, firstHours), Set("V02", 22, 20, secondHours)],
        Unmet = [],
        Water = [new SourceWater("bore", (firstHours + secondHours) * 30, 40_000)],
        Packing = new PackingQuality(10, 10, 0, true),
    };
}
