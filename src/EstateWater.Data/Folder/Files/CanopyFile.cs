using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>canopy.csv</c>: looks at the canopy.</summary>
internal static class CanopyFile
{
    public const string Name = "canopy.csv";

    private static readonly Column Block = new("block") { IsRequired = true };
    private static readonly Column Date = new("date") { IsRequired = true };
    private static readonly Column ShootLength = new("shoot_length_cm") { Min = 0, Max = 1000 };
    private static readonly Column ShadedFraction = new("shaded_fraction") { Min = 0, Max = 1, Hint = "write 0.35 for 35 %" };
    private static readonly Column GrowingTips = new("growing_tips_pct") { Min = 0, Max = 100 };
    private static readonly Column VisualStress = new("visual_stress") { Min = 0, Max = 3 };
    private static readonly Column Note = new("note") { MaxLength = 2000 };
    private static readonly Column[] Columns = [Block, Date, ShootLength, ShadedFraction, GrowingTips, VisualStress, Note];

    public static List<CanopyVisit> Read(FolderScan scan)
    {
        var visits = new List<CanopyVisit>();
        var lines = new Dictionary<(string, DateOnly), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var visit = new CanopyVisit
            {
                BlockCode = row.Code(Block, scan.Blocks),
                Date = row.Date(Date),
                ShootLengthCm = row.NumberOrNull(ShootLength),
                ShadedFraction = row.NumberOrNull(ShadedFraction),
                GrowingTipsPct = row.NumberOrNull(GrowingTips),
                VisualStress = row.WholeNumberOrNull(VisualStress),
                Note = row.Note(Note),
            };
            row.Once(lines, (visit.BlockCode, visit.Date), Date, "a block has one canopy visit a day");
            visits.Add(visit);
        }

        return visits;
    }

    public static void Write(FolderOutput output, IReadOnlyList<CanopyVisit> visits) =>
        output.Csv(Name, Columns, visits, (row, v) => row
            .Text(v.BlockCode).Date(v.Date).Number(v.ShootLengthCm).Number(v.ShadedFraction)
            .Number(v.GrowingTipsPct).Number(v.VisualStress).Text(v.Note));
}
