using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>soil-moisture.csv</c>: one depth of one tube a row, as water content or as neutron counts.</summary>
internal static class SoilMoistureFile
{
    public const string Name = "soil-moisture.csv";

    private static readonly Column Block = new("block") { IsRequired = true };
    private static readonly Column Date = new("date") { IsRequired = true };
    private static readonly Column Tube = new("tube") { IsRequired = true };
    private static readonly Column Depth = new("depth_cm") { IsRequired = true, Min = 0, MinExcluded = true, Max = 1000 };
    private static readonly Column Vwc = new("vwc_m3_per_m3") { Min = 0, Max = 1, Hint = "write 0.25 for 25 %" };
    private static readonly Column Count = new("count") { Min = 0 };
    private static readonly Column StandardCount = new("standard_count") { Min = 0, MinExcluded = true };
    private static readonly Column[] Columns = [Block, Date, Tube, Depth, Vwc, Count, StandardCount];

    public static List<SoilMoisture> Read(FolderScan scan)
    {
        var moistures = new List<SoilMoisture>();
        var lines = new Dictionary<(string, DateOnly, string, double), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var moisture = new SoilMoisture
            {
                BlockCode = row.Code(Block, scan.Blocks),
                Date = row.Date(Date),
                Tube = row.Text(Tube),
                DepthCm = row.Number(Depth),
                VwcM3PerM3 = row.NumberOrNull(Vwc),
                Count = row.NumberOrNull(Count),
                StandardCount = row.NumberOrNull(StandardCount),
            };
            CheckForm(row, moisture);
            row.Once(lines, (moisture.BlockCode, moisture.Date, moisture.Tube, moisture.DepthCm), Depth, "a tube has one row a day and depth");
            moistures.Add(moisture);
        }

        return moistures;
    }

    public static void Write(FolderOutput output, IReadOnlyList<SoilMoisture> moistures) =>
        output.Csv(Name, Columns, moistures, (row, m) => row
            .Text(m.BlockCode).Date(m.Date).Text(m.Tube).Number(m.DepthCm)
            .Number(m.VwcM3PerM3).Number(m.Count).Number(m.StandardCount));

    private static void CheckForm(CsvRow row, SoilMoisture moisture)
    {
        switch (moisture.VwcM3PerM3, moisture.Count, moisture.StandardCount)
        {
            case (null, null, null):
                row.Report(Vwc, "is empty and there is no count; give vwc_m3_per_m3, or count with standard_count");
                break;
            case (null, not null, null):
                row.Report(StandardCount, "is empty; a count needs the standard count of its session");
                break;
            case (null, null, not null):
                row.Report(Count, "is empty; a standard count alone says nothing");
                break;
            case (not null, not null, _) or (not null, _, not null):
                row.Report(Vwc, "is given beside a count; give either the water content or the count with its standard count");
                break;
        }
    }
}
