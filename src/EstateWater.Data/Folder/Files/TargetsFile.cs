using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>targets.csv</c>: the tension wanted in each part of the season.</summary>
internal static class TargetsFile
{
    public const string Name = "targets.csv";

    private static readonly Column Block = new("block");
    private static readonly Column Fruit = new("fruit");
    private static readonly Column FromElStage = new("from_el_stage") { IsRequired = true, Min = 1, Max = 47 };
    private static readonly Column ToElStage = new("to_el_stage") { IsRequired = true, Min = 1, Max = 47 };
    private static readonly Column Measure = new("measure") { IsRequired = true };
    private static readonly Column Floor = new("floor_bar") { IsRequired = true, Min = 0, Max = 100, Hint = "tension is positive; 1 MPa is 10 bar" };
    private static readonly Column Ceiling = new("ceiling_bar") { IsRequired = true, Min = 0, MinExcluded = true, Max = 100, Hint = "tension is positive; 1 MPa is 10 bar" };
    private static readonly Column[] Columns = [Block, Fruit, FromElStage, ToElStage, Measure, Floor, Ceiling];

    public static List<Target> Read(FolderScan scan)
    {
        var targets = new List<Target>();
        var earlier = new Dictionary<(string?, FruitColour?, WaterPotentialMeasure), List<(Target Target, int Line)>>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var target = ReadTarget(scan, row);
            CheckOrder(row, target);
            CheckOverlap(row, target, earlier);
            targets.Add(target);
        }

        return targets;
    }

    public static void Write(FolderOutput output, IReadOnlyList<Target> targets) =>
        output.Csv(Name, Columns, targets, (row, t) => row
            .Text(t.BlockCode).Word(t.Fruit).Number(t.FromElStage).Number(t.ToElStage)
            .Word<WaterPotentialMeasure>(t.Measure).Number(t.FloorBar).Number(t.CeilingBar));

    private static Target ReadTarget(FolderScan scan, CsvRow row) => new()
    {
        BlockCode = row.CodeOrNull(Block, scan.Blocks),
        Fruit = row.ChoiceOrNull<FruitColour>(Fruit),
        FromElStage = row.Number(FromElStage),
        ToElStage = row.Number(ToElStage),
        Measure = row.Choice<WaterPotentialMeasure>(Measure),
        FloorBar = row.Number(Floor),
        CeilingBar = row.Number(Ceiling),
    };

    private static void CheckOrder(CsvRow row, Target target)
    {
        if (target.FromElStage > target.ToElStage)
        {
            row.Report(FromElStage, "is after to_el_stage; swap them");
        }

        if (target.FloorBar > target.CeilingBar)
        {
            row.Report(Floor, "is above ceiling_bar; the floor is the wetter, lower tension");
        }
    }

    // Two rows for the same block and fruit that hold at one stage would contradict each other.
    private static void CheckOverlap(
        CsvRow row, Target target, Dictionary<(string?, FruitColour?, WaterPotentialMeasure), List<(Target Target, int Line)>> earlier)
    {
        var key = (target.BlockCode, target.Fruit, target.Measure);
        if (!earlier.TryGetValue(key, out var same))
        {
            earlier[key] = same = [];
        }

        foreach (var (other, line) in same)
        {
            var sameStages = other.FromElStage == target.FromElStage && other.ToElStage == target.ToElStage;
            if (sameStages || Math.Max(other.FromElStage, target.FromElStage) < Math.Min(other.ToElStage, target.ToElStage))
            {
                row.Report(FromElStage, $"overlaps the stages of line {line}; one target holds at a time");
            }
        }

        same.Add((target, row.Line));
    }
}
