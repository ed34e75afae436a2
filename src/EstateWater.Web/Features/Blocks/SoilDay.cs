using EstateWater.Data.Model;
using EstateWater.Web.Features.Soil;
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
        var waterContents = new WaterContents(snapshot.Contents.ProbeCalibrations);
        return [.. snapshot.Contents.SoilMoistures
            .Where(reading => reading.BlockCode == block.Code && reading.Date <= snapshot.Today)
            .Select(reading => (reading.Date, reading.DepthCm, Vwc: waterContents.Of(reading)))
            .Where(reading => reading.Vwc is not null)
            .GroupBy(reading => reading.Date)
            .OrderBy(day => day.Key)
            .Select(day => new SoilDay(
                day.Key,
                day.GroupBy(reading => reading.DepthCm).ToDictionary(depth => depth.Key, depth => 100 * depth.Average(reading => reading.Vwc!.Value))))];
    }
}
