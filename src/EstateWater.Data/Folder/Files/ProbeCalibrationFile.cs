using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>probe-calibration.csv</c>: what a neutron count means in each soil.</summary>
internal static class ProbeCalibrationFile
{
    public const string Name = "probe-calibration.csv";

    private static readonly Column Block = new("block");
    private static readonly Column Intercept = new("intercept") { IsRequired = true, Min = -10, Max = 10 };
    private static readonly Column Slope = new("slope") { IsRequired = true, Min = 0, MinExcluded = true, Max = 100 };
    private static readonly Column[] Columns = [Block, Intercept, Slope];

    public static List<ProbeCalibration> Read(FolderScan scan)
    {
        var calibrations = new List<ProbeCalibration>();
        var lines = new Dictionary<string, int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var calibration = new ProbeCalibration
            {
                BlockCode = row.CodeOrNull(Block, scan.Blocks),
                Intercept = row.Number(Intercept),
                Slope = row.Number(Slope),
            };
            row.Once(lines, calibration.BlockCode ?? "", Block, "a block has one calibration, and so has the estate");
            calibrations.Add(calibration);
        }

        return calibrations;
    }

    public static void Write(FolderOutput output, IReadOnlyList<ProbeCalibration> calibrations) =>
        output.Csv(Name, Columns, calibrations, (row, c) => row.Text(c.BlockCode).Number(c.Intercept).Number(c.Slope));
}
