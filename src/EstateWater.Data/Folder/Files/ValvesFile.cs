using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>valves.csv</c>: what opens as one, and what feeds it.</summary>
internal static class ValvesFile
{
    public const string Name = "valves.csv";

    private static readonly Column Valve = new("valve") { IsRequired = true };
    private static readonly Column Source = new("source") { IsRequired = true };
    private static readonly Column[] Columns = [Valve, Source];

    public static List<Valve> Read(FolderScan scan) =>
        [.. scan.Rows(Name, Columns, scan.Valves).Select(row => new Valve
        {
            Code = row.NewCode(Valve, scan.Valves),
            SourceCode = row.Code(Source, scan.Sources),
        })];

    public static void Write(FolderOutput output, IReadOnlyList<Valve> valves) =>
        output.Csv(Name, Columns, valves, (row, v) => row.Text(v.Code).Text(v.SourceCode));
}
