using EstateWater.Data.Model;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Blocks;

/// <summary>Soil water of a block on one day.</summary>
/// <param name="Date">The day.</param>
/// <param name="PctByDepthCm">Mean volumetric water content of the tubes by depth in cm. [%]</param>
public sealed record SoilDay(DateOnly Date, IReadOnlyDictionary<double, double> PctByDepthCm)
{
    /// <summary>The block's days, in order of time. A count without a calibration gives no water content and is left out.</summary>
    public static IReadOnlyList<SoilDay> From(Block block, EstateSnapshot snapshot)
    {
        var calibrations = snapshot.Contents.ProbeCalibrations;
        var calibration = calibrations.FirstOrDefault(each => each.BlockCode == block.Code) ?? calibrations.FirstOrDefault(each => each.BlockCode is null);
        return [.. snapshot.Contents.SoilMoistures
            .Where(reading => reading.BlockCode == block.Code && reading.Date <= snapshot.Today)
            .Select(reading => (reading.Date, reading.DepthCm, Vwc: WaterContent(reading, calibration)))
            .Where(reading => reading.Vwc is not null)
            .GroupBy(reading => reading.Date)
            .OrderBy(day => day.Key)
            .Select(day => new SoilDay(
                day.Key,
                day.GroupBy(reading => reading.DepthCm).ToDictionary(depth => depth.Key, depth => 100 * depth.Average(reading => reading.Vwc!.Value))))];
    }

    private static double? WaterContent(SoilMoisture reading, ProbeCalibration? calibration) =>
        reading.VwcM3PerM3
        ?? (reading is { Count: { } count, StandardCount: { } standard } && calibration is not null
            ? calibration.Intercept + calibration.Slope * count / standard
            : null);
}
