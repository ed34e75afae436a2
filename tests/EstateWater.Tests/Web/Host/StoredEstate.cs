using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Tests.Web.Host;

/// <summary>Two blocks with two months of weather, weekly readings and a forecast: enough for the real planner.</summary>
internal static class StoredEstate
{
    public static EstateContents Contents { get; } = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)).Contents with
    {
        Targets = [new Target { FromElStage = 1, ToElStage = 47, Measure = WaterPotentialMeasure.Leaf, FloorBar = 9, CeilingBar = 13 }],
        Stages = [.. Blocks.Select(code => new StageObservation { BlockCode = code, Date = Day(-60), ElStage = 27 })],
        Weather = [.. Enumerable.Range(1, 60).Reverse().Select(ago => Weather(Day(-ago), 31))],
        Forecasts = [.. Enumerable.Range(0, 11).Select(ahead => Forecast(Day(ahead), 37))],
        ChamberReadings = [.. Blocks.SelectMany(code => Enumerable.Range(0, 4).SelectMany(week => Set(code, Day(-2 - 7 * week), 12 - week)))],
        SoilMoistures = [new SoilMoisture { BlockCode = "B1", Date = Day(-2), Tube = "T1", DepthCm = 40, Count = 6000, StandardCount = 12000 }],
        ProbeCalibrations = [new ProbeCalibration { Intercept = -0.02, Slope = 0.6 }],
        AppliedWaters = [new AppliedWater { ValveCode = "V1", StartedAt = At(Day(-9), 22), Hours = 6 }],
    };

    private static IEnumerable<string> Blocks => ["B1", "B2"];

    private static DateOnly Day(int ahead) => SmallEstate.Today.AddDays(ahead);

    private static DateTimeOffset At(DateOnly day, int hour, int minute = 0) => new(day.ToDateTime(new TimeOnly(hour, minute)), TimeSpan.FromHours(2));

    private static WeatherDay Weather(DateOnly day, double tMax) => new()
    {
        StationCode = "home",
        Date = day,
        TMaxC = tMax,
        TMinC = 15,
        RhMaxPct = 90,
        RhMinPct = 30,
        WindMPerS = 2,
        SolarMjPerM2 = 26,
        RainMm = 0,
    };

    private static ForecastDay Forecast(DateOnly day, double tMax) => new()
    {
        StationCode = "home",
        Date = day,
        IssuedAt = At(SmallEstate.Today, 5),
        TMaxC = tMax,
        TMinC = 18,
        RhMaxPct = 80,
        RhMinPct = 20,
        WindMPerS = 2,
        SolarMjPerM2 = 27,
        RainMm = 0,
    };

    private static IEnumerable<ChamberReading> Set(string code, DateOnly day, double bar) => Enumerable.Range(0, 5).Select(leaf => new ChamberReading
    {
        BlockCode = code,
        TakenAt = At(day, 13, leaf),
        Measure = WaterPotentialMeasure.Leaf,
        TensionBar = bar + 0.25 * (leaf - 2),
        Vine = $"{leaf}",
        Exposure = LeafExposure.Sun,
        DelayS = 20,
    });
}
