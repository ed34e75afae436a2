using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>applied-water.csv</c>: water put on.</summary>
internal static class AppliedWaterFile
{
    public const string Name = "applied-water.csv";

    private static readonly Column Valve = new("valve") { IsRequired = true };
    private static readonly Column StartedAt = new("started_at") { IsRequired = true };
    private static readonly Column Hours = new("hours") { IsRequired = true, Min = 0, Max = 744 };
    private static readonly Column Meter = new("meter_m3") { Min = 0 };
    private static readonly Column ConfirmedBy = new("confirmed_by");
    private static readonly Column Note = new("note") { MaxLength = 2000 };
    private static readonly Column[] Columns = [Valve, StartedAt, Hours, Meter, ConfirmedBy, Note];

    public static List<AppliedWater> Read(FolderScan scan)
    {
        var waters = new List<AppliedWater>();
        var lines = new Dictionary<(string, DateTimeOffset), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var water = new AppliedWater
            {
                ValveCode = row.Code(Valve, scan.Valves),
                StartedAt = row.Instant(StartedAt),
                Hours = row.Number(Hours),
                MeterM3 = row.NumberOrNull(Meter),
                ConfirmedBy = row.TextOrNull(ConfirmedBy),
                Note = row.Note(Note),
            };
            row.Once(lines, (water.ValveCode, water.StartedAt), StartedAt, "a valve opens once at a time");
            waters.Add(water);
        }

        return waters;
    }

    public static void Write(FolderOutput output, IReadOnlyList<AppliedWater> waters) =>
        output.Csv(Name, Columns, waters, (row, w) => row
            .Text(w.ValveCode).Instant(w.StartedAt).Number(w.Hours).Number(w.MeterM3).Text(w.ConfirmedBy).Text(w.Note));
}
