using EstateWater.Agronomy.WaterStatus;
using EstateWater.Agronomy.Weather;
using EstateWater.Planning;

namespace EstateWater.Tests.Planning;

/// <summary>An invented estate, small enough to plan in a blink, for what must hold of any plan.</summary>
internal static class SmallEstate
{
    public static readonly DateOnly Today = new(2026, 1, 20);

    private static readonly TimeSpan Offset = TimeSpan.FromHours(10.5);

    public static DateTimeOffset AsOf => new(2026, 1, 20, 6, 0, 0, Offset);

    public static PlanRequest Request(int blocks = 4, double maxFlowM3PerH = 60, double? allocationM3 = 40_000, double hotC = 39) => new()
    {
        AsOf = AsOf,
        TimeZone = TimeZoneInfo.FindSystemTimeZoneById("Australia/Adelaide"),
        HorizonDays = 10,
        Stations = [new PlanStation("home", new StationSite(-34.5, 138.9, 150), [.. Days()], [Forecast(hotC)])],
        Sources = [new PlanSource("dam", maxFlowM3PerH, new TimeOnly(20, 0), new TimeOnly(8, 0), allocationM3)],
        Valves = [.. Enumerable.Range(1, blocks).Select(i => new PlanValve($"V{i}", "dam", [.. Applied(i)]))],
        Blocks = [.. Enumerable.Range(1, blocks).Select(Block)],
    };

    public static PlanBlock Block(int i) => new()
    {
        Code = $"B{i}",
        StationCode = "home",
        ValveCode = $"V{i}",
        IsWhite = false,
        LongitudeDegrees = 138.9,
        LatitudeDegrees = -34.5,
        AreaM2 = 10_000 + (2_000 * i),
        RowSpacingM = 2.5,
        VineSpacingM = 1.5,
        EmittersPerVine = 2,
        EmitterFlowLPerH = 2.3,
        EmissionUniformity = 0.9,
        RootDepthM = 1.2,
        AvailableWaterMmPerM = 110,
        WettedFraction = 0.4,
        ShadedFraction = 0.32,
        Stages = [new ObservedStage(new DateOnly(2025, 9, 20), 4), new ObservedStage(new DateOnly(2025, 11, 15), 23), new ObservedStage(new DateOnly(2026, 1, 12), 35)],
        Targets = [new StageTarget(1, 27, WaterPotentialMeasure.Leaf, 5, 10), new StageTarget(27, 47, WaterPotentialMeasure.Leaf, 10, 14)],
        Readings = [.. Readings(i)],
    };

    /// <summary>A block with one more set, an hour ago, so much drier than its last.</summary>
    public static PlanBlock ReadAgain(PlanBlock block, double moreBar) => block with
    {
        Readings = [.. block.Readings, .. block.Readings.TakeLast(6).Select(r => r with { TakenAt = AsOf.AddHours(-1), TensionBar = r.TensionBar + moreBar })],
    };

    public static IssuedForecast Forecast(double hotC) => new(
        AsOf.AddHours(-1),
        null,
        [.. Enumerable.Range(0, 12).Select(d => Day(Today.AddDays(d), d is >= 5 and <= 8 ? hotC : 31))]);

    private static IEnumerable<DailyWeather> Days() =>
        Enumerable.Range(-110, 110).Select(d => Day(Today.AddDays(d), 24 + (d + 110) / 18.0 + (3 * Math.Sin(d))));

    private static DailyWeather Day(DateOnly date, double tMaxC) => new(date, tMaxC, tMaxC - 15, 85, 30, 2, 27, 0);

    private static IEnumerable<AppliedSet> Applied(int valve) =>
        Enumerable.Range(1, 3).Select(week => new AppliedSet(AsOf.AddDays(-7 * week).AddHours(14), 4, valve == 2 ? 35 : null));

    // Weekly sets that climb to between 11 and 14 bar; block by block a little drier.
    private static IEnumerable<LeafReading> Readings(int block)
    {
        for (var week = 5; week >= 0; week--)
        {
            var noon = new DateTimeOffset(2026, 1, 19, 13, 20, 0, Offset).AddDays(-7 * week);
            for (var leaf = 0; leaf < 6; leaf++)
            {
                var scatter = ((leaf * 7 + block * 3 + week) % 5 - 2) * 0.4;
                yield return new LeafReading(noon.AddMinutes(leaf), WaterPotentialMeasure.Leaf, 13.4 - (0.6 * week) + (0.35 * (block - 2)) + scatter, $"G{leaf / 3}", $"{leaf}", LeafExposure.Sun, null, 25);
            }
        }
    }
}
