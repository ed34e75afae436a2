using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.State;
using NetTopologySuite.Geometries;

namespace EstateWater.Tests.Web;

/// <summary>A made-up estate of square blocks in a grid, for tests of the pages. Each test changes what it is about.</summary>
internal static class SmallEstate
{
    public static readonly DateTimeOffset AsOf = new(2025, 1, 22, 6, 0, 0, TimeSpan.FromHours(2));

    public static readonly DateOnly Today = new(2025, 1, 22);

    public static EstateSnapshot Snapshot(params BlockPlan[] plans) => Snapshot(PlanOf(plans));

    public static EstateSnapshot Snapshot(Plan plan) => new()
    {
        Contents = new EstateContents
        {
            Estate = new Estate { Name = "Test estate", TimeZone = "Africa/Johannesburg" },
            Stations = [new Station { Code = "home", LatitudeDegrees = -33.9, LongitudeDegrees = 19, ElevationM = 140 }],
            Sources = [new WaterSource { Code = "dam", MaxFlowM3PerH = 100, DailyFrom = new(20, 0), DailyTo = new(6, 0), SeasonAllocationM3 = 1000 }],
            Valves = [.. plan.Blocks.Select(block => new Valve { Code = "V" + block.Block[1..], SourceCode = "dam" })],
            Blocks = [.. plan.Blocks.Select((block, place) => BlockOf(block.Block, place))],
        },
        Plan = plan,
        Version = 7,
    };

    public static Plan PlanOf(params BlockPlan[] blocks) => new()
    {
        AsOf = AsOf,
        HorizonDays = 10,
        HeatSpells = [],
        Blocks = blocks,
        Sets = [],
        Unmet = [],
        Water = [new SourceWater("dam", 120, 400)],
        Packing = new PackingQuality(1, 1, 0, true),
    };

    /// <summary>A block whose middle tension goes through the given days without and with the planned water.</summary>
    public static BlockPlan BlockPlanOf(string code, int rank = 1, double[]? unwatered = null, double[]? planned = null, double ceiling = 14, double hours = 0) => new()
    {
        Block = code,
        Rank = rank,
        Measure = WaterPotentialMeasure.Leaf,
        FloorBar = 10,
        CeilingBar = ceiling,
        Latest = Latest("moderate to weak"),
        Outlook = OutlookOf(unwatered ?? [11, 11.5, 12], planned),
        Hours = hours,
        NetMm = hours,
        VolumeM3 = hours * 20,
        Reason = $"Reason of {code}.",
    };

    public static LatestReadingSet Latest(string stressClass, int daysAgo = 1) => new()
    {
        TakenAt = new DateTimeOffset(2025, 1, 22, 13, 0, 0, TimeSpan.FromHours(2)).AddDays(-daysAgo),
        MeanBar = 12.3,
        StandardErrorBar = 0.4,
        Leaves = 10,
        StressClass = stressClass,
        Checks = [],
    };

    public static OutlookDay[] OutlookOf(double[] unwatered, double[]? planned = null) =>
        [.. unwatered.Select((bar, day) => new OutlookDay(Today.AddDays(day), Band(bar), Band((planned ?? unwatered)[day])))];

    private static TensionBand Band(double middle) => new(middle - 1, middle, middle + 1);

    private static Block BlockOf(string code, int place)
    {
        var (west, south) = (19 + 0.004 * (place % 8), -33.9 + 0.003 * (place / 8));
        var ring = new Coordinate[]
        {
            new(west, south), new(west + 0.0035, south + 0.0002), new(west + 0.0034, south + 0.0026), new(west, south + 0.0024), new(west, south),
        };
        return new Block
        {
            Code = code,
            Name = "Block " + code[1..],
            Fruit = FruitColour.Red,
            StationCode = "home",
            ValveCode = "V" + code[1..],
            RowSpacingM = 2.4,
            VineSpacingM = 1.5,
            EmittersPerVine = 2,
            EmitterFlowLPerH = 2.3,
            RootDepthM = 1.2,
            AvailableWaterMmPerM = 140,
            Outline = new Polygon(new LinearRing(ring)),
            AreaM2 = 80000,
        };
    }
}
