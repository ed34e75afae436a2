using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>chamber-readings.csv</c>: leaves in the pressure chamber.</summary>
internal static class ChamberReadingsFile
{
    public const string Name = "chamber-readings.csv";

    private static readonly Column Block = new("block") { IsRequired = true };
    private static readonly Column TakenAt = new("taken_at") { IsRequired = true };
    private static readonly Column Measure = new("measure") { IsRequired = true };
    private static readonly Column Group = new("group");
    private static readonly Column Vine = new("vine");
    private static readonly Column Tension = new("tension_bar")
    {
        IsRequired = true,
        Min = 0,
        MinExcluded = true,
        Max = 100,
        Hint = "the chamber's balancing pressure is positive; 1 MPa is 10 bar, 1 bar is 14.5 psi",
    };

    private static readonly Column Exposure = new("exposure");
    private static readonly Column Bagged = new("bagged_min") { Min = 0, Max = 10_000 };
    private static readonly Column Delay = new("delay_s") { Min = 0, Max = 100_000 };
    private static readonly Column Observer = new("observer");
    private static readonly Column Note = new("note") { MaxLength = 2000 };
    private static readonly Column[] Columns = [Block, TakenAt, Measure, Group, Vine, Tension, Exposure, Bagged, Delay, Observer, Note];

    public static List<ChamberReading> Read(FolderScan scan)
    {
        var readings = new List<ChamberReading>();
        var lines = new Dictionary<(string, DateTimeOffset, WaterPotentialMeasure, string?, string, LeafExposure?), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var reading = ReadReading(scan, row);

            // Leaves without a vine's number may share a minute; a numbered vine gives one leaf at a time.
            if (reading.Vine is { } vine)
            {
                row.Once(
                    lines,
                    (reading.BlockCode, reading.TakenAt, reading.Measure, reading.Group, vine, reading.Exposure),
                    TakenAt,
                    "the same vine at the same moment is one leaf; remove it, or give each leaf its own time");
            }

            readings.Add(reading);
        }

        return readings;
    }

    public static void Write(FolderOutput output, IReadOnlyList<ChamberReading> readings) =>
        output.Csv(Name, Columns, readings, (row, r) => row
            .Text(r.BlockCode).Instant(r.TakenAt).Word<WaterPotentialMeasure>(r.Measure).Text(r.Group).Text(r.Vine)
            .Number(r.TensionBar).Word(r.Exposure).Number(r.BaggedMin).Number(r.DelayS).Text(r.Observer).Text(r.Note));

    private static ChamberReading ReadReading(FolderScan scan, CsvRow row) => new()
    {
        BlockCode = row.Code(Block, scan.Blocks),
        TakenAt = row.Instant(TakenAt),
        Measure = row.Choice<WaterPotentialMeasure>(Measure),
        Group = row.TextOrNull(Group),
        Vine = row.TextOrNull(Vine),
        TensionBar = row.Number(Tension),
        Exposure = row.ChoiceOrNull<LeafExposure>(Exposure),
        BaggedMin = row.NumberOrNull(Bagged),
        DelayS = row.NumberOrNull(Delay),
        Observer = row.TextOrNull(Observer),
        Note = row.Note(Note),
    };
}
