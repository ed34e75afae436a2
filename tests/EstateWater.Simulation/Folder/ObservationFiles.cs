using EstateWater.Simulation.Observation;
using static EstateWater.Simulation.Folder.CsvFile;

namespace EstateWater.Simulation.Folder;

/// <summary>What the field crew wrote down.</summary>
internal static class ObservationFiles
{
    public static void Write(FieldCrew crew, string folder, DateTimeOffset asOf)
    {
        var today = DateOnly.FromDateTime(asOf.DateTime);
        Readings(crew, asOf).Save(folder, "chamber-readings.csv");
        var soil = new CsvFile("block,date,tube,depth_cm,count,standard_count");
        foreach (var c in crew.Counts.Where(c => c.Date < today))
        {
            soil.Row(c.Block, c.Date, c.Tube, c.DepthCm, c.Count, c.StandardCount);
        }

        soil.Save(folder, "soil-moisture.csv");
        var canopy = new CsvFile("block,date,shoot_length_cm,shaded_fraction,growing_tips_pct,visual_stress");
        foreach (var v in crew.Visits.Where(v => v.Date < today))
        {
            canopy.Row(v.Block, v.Date, v.ShootCm, Number(v.Shade, 2), v.GrowingTipsPct, v.VisualStress);
        }

        canopy.Save(folder, "canopy.csv");
        var stages = new CsvFile("block,date,el_stage");
        foreach (var s in crew.Stages.Where(s => s.Date < today))
        {
            stages.Row(s.Block, s.Date, s.Stage);
        }

        stages.Save(folder, "stages.csv");
    }

    private static CsvFile Readings(FieldCrew crew, DateTimeOffset asOf)
    {
        var file = new CsvFile("block,taken_at,measure,group,vine,tension_bar,exposure,bagged_min,delay_s,observer,note");
        foreach (var r in crew.Readings.Where(r => r.TakenAt <= asOf))
        {
            file.Row(r.Block, r.TakenAt, EstateFiles.Word(r.Measure), r.Group, r.Vine, Number(r.TensionBar, 1), r.Exposure, r.BaggedMin, r.DelayS, r.Observer, r.Note);
        }

        return file;
    }
}
