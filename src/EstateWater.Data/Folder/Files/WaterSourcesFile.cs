using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>water-sources.csv</c>: the pumps, dams and mains.</summary>
internal static class WaterSourcesFile
{
    public const string Name = "water-sources.csv";

    private static readonly Column Source = new("source") { IsRequired = true };
    private static readonly Column MaxFlow = new("max_flow_m3_per_h") { IsRequired = true, Min = 0, MinExcluded = true };
    private static readonly Column DailyFrom = new("daily_from") { IsRequired = true };
    private static readonly Column DailyTo = new("daily_to") { IsRequired = true };
    private static readonly Column SeasonAllocation = new("season_allocation_m3") { Min = 0 };
    private static readonly Column WaterEc = new("water_ec_ds_per_m") { Min = 0, Max = 60, Hint = "1 dS/m is 1000 µS/cm" };
    private static readonly Column[] Columns = [Source, MaxFlow, DailyFrom, DailyTo, SeasonAllocation, WaterEc];

    public static List<WaterSource> Read(FolderScan scan) =>
        [.. scan.Rows(Name, Columns, scan.Sources).Select(row => new WaterSource
        {
            Code = row.NewCode(Source, scan.Sources),
            MaxFlowM3PerH = row.Number(MaxFlow),
            DailyFrom = row.TimeOfDay(DailyFrom),
            DailyTo = row.TimeOfDay(DailyTo),
            SeasonAllocationM3 = row.NumberOrNull(SeasonAllocation),
            WaterEcDsPerM = row.NumberOrNull(WaterEc),
        })];

    public static void Write(FolderOutput output, IReadOnlyList<WaterSource> sources) =>
        output.Csv(Name, Columns, sources, (row, s) => row
            .Text(s.Code).Number(s.MaxFlowM3PerH).TimeOfDay(s.DailyFrom).TimeOfDay(s.DailyTo)
            .Number(s.SeasonAllocationM3).Number(s.WaterEcDsPerM));
}
