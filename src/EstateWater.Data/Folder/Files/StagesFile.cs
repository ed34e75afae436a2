using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>stages.csv</c>: growth stages as observed.</summary>
internal static class StagesFile
{
    public const string Name = "stages.csv";

    private static readonly Column Block = new("block") { IsRequired = true };
    private static readonly Column Date = new("date") { IsRequired = true };
    private static readonly Column ElStage = new("el_stage") { IsRequired = true, Min = 1, Max = 47 };
    private static readonly Column[] Columns = [Block, Date, ElStage];

    public static List<StageObservation> Read(FolderScan scan)
    {
        var stages = new List<StageObservation>();
        var lines = new Dictionary<(string, DateOnly), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var stage = new StageObservation
            {
                BlockCode = row.Code(Block, scan.Blocks),
                Date = row.Date(Date),
                ElStage = row.Number(ElStage),
            };
            row.Once(lines, (stage.BlockCode, stage.Date), Date, "a block has one stage a day");
            stages.Add(stage);
        }

        return stages;
    }

    public static void Write(FolderOutput output, IReadOnlyList<StageObservation> stages) =>
        output.Csv(Name, Columns, stages, (row, s) => row.Text(s.BlockCode).Date(s.Date).Number(s.ElStage));
}
