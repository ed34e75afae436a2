namespace EstateWater.Data.Model;

/// <summary>The one order of an estate's rows, whatever they were read from: by place, then by time.</summary>
public static class EstateOrder
{
    private static readonly StringComparer Codes = StringComparer.Ordinal;

    /// <summary>The same estate with every list in order.</summary>
    public static EstateContents InOrder(this EstateContents contents)
    {
        ArgumentNullException.ThrowIfNull(contents);
        return contents with
        {
            Stations = [.. contents.Stations.OrderBy(s => s.Code, Codes)],
            Sources = [.. contents.Sources.OrderBy(s => s.Code, Codes)],
            Valves = [.. contents.Valves.OrderBy(v => v.Code, Codes)],
            Blocks = [.. contents.Blocks.OrderBy(b => b.Code, Codes)],
            Stages = [.. contents.Stages.OrderBy(s => s.BlockCode, Codes).ThenBy(s => s.Date)],
            Targets = [.. contents.Targets.OrderBy(t => t.BlockCode, Codes).ThenBy(t => t.Fruit).ThenBy(t => t.FromElStage).ThenBy(t => t.ToElStage).ThenBy(t => t.Measure)],
            Weather = [.. contents.Weather.OrderBy(w => w.StationCode, Codes).ThenBy(w => w.Date)],
            Forecasts = [.. contents.Forecasts.OrderBy(f => f.StationCode, Codes).ThenBy(f => f.IssuedAt).ThenBy(f => f.Member, Codes).ThenBy(f => f.Date)],
            ChamberReadings = [.. contents.ChamberReadings.InOrder()],
            SoilMoistures = [.. contents.SoilMoistures.OrderBy(s => s.BlockCode, Codes).ThenBy(s => s.Date).ThenBy(s => s.Tube, Codes).ThenBy(s => s.DepthCm)],
            ProbeCalibrations = [.. contents.ProbeCalibrations.OrderBy(c => c.BlockCode, Codes)],
            CanopyVisits = [.. contents.CanopyVisits.OrderBy(v => v.BlockCode, Codes).ThenBy(v => v.Date)],
            AppliedWaters = [.. contents.AppliedWaters.OrderBy(w => w.ValveCode, Codes).ThenBy(w => w.StartedAt)],
        };
    }

    // Leaves without a vine's number share all but what was measured, so that comes last.
    private static IOrderedEnumerable<ChamberReading> InOrder(this IEnumerable<ChamberReading> readings) => readings
        .OrderBy(r => r.BlockCode, Codes).ThenBy(r => r.TakenAt).ThenBy(r => r.Measure)
        .ThenBy(r => r.Group, Codes).ThenBy(r => r.Vine, Codes).ThenBy(r => r.Exposure)
        .ThenBy(r => r.TensionBar).ThenBy(r => r.BaggedMin).ThenBy(r => r.DelayS).ThenBy(r => r.Observer, Codes).ThenBy(r => r.Note, Codes);
}
