using EstateWater.Data.Model;
using NetTopologySuite.Geometries;

namespace EstateWater.Tests.Web.Sets;

/// <summary>Two blocks on one valve of one bore.</summary>
internal static class SampleEstate
{
    public static EstateContents Contents { get; } = new()
    {
        Estate = new Estate { Name = "Test estate", TimeZone = "Africa/Johannesburg" },
        Sources = [new WaterSource { Code = "bore", MaxFlowM3PerH = 100, DailyFrom = new TimeOnly(20, 0), DailyTo = new TimeOnly(10, 0) }],
        Blocks = [Block("B01", "Long Rows"), Block("B02", null)],
    };

    private static Block Block(string code, string? name) => new()
    {
        Code = code,
        Name = name,
        Fruit = FruitColour.Red,
        StationCode = "S1",
        ValveCode = "V01",
        RowSpacingM = 2.5,
        VineSpacingM = 1.5,
        EmittersPerVine = 2,
        EmitterFlowLPerH = 2,
        RootDepthM = 1,
        AvailableWaterMmPerM = 150,
        Outline = Polygon.Empty,
        AreaM2 = 10_000,
    };
}
