using EstateWater.Agronomy.Soil;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Soil;

/// <summary>Turns soil readings into water contents.</summary>
/// <param name="calibrations">The estate's calibrations: a block's own goes before the one for every block.</param>
internal sealed class WaterContents(IReadOnlyList<ProbeCalibration> calibrations)
{
    private readonly Dictionary<string, ProbeCalibrationLine> ofBlock = calibrations
        .Where(each => each.BlockCode is not null)
        .GroupBy(each => each.BlockCode!)
        .ToDictionary(group => group.Key, group => Line(group.First()));

    private readonly ProbeCalibrationLine? ofAll = calibrations.Where(each => each.BlockCode is null).Select(Line).FirstOrDefault();

    /// <summary>Volumetric water content, never negative; null for a count without a calibration, which says nothing in water. [m³/m³]</summary>
    public double? Of(SoilMoisture reading) => reading switch
    {
        { VwcM3PerM3: { } direct } => direct,
        { Count: { } count, StandardCount: > 0 and var standard } when LineOf(reading.BlockCode) is { } line =>
            Math.Max(0, line.WaterContent(NeutronProbe.CountRatio(count, standard))),
        _ => null,
    };

    private ProbeCalibrationLine? LineOf(string block) => ofBlock.GetValueOrDefault(block) ?? ofAll;

    private static ProbeCalibrationLine Line(ProbeCalibration calibration) => new(calibration.Intercept, calibration.Slope);
}
