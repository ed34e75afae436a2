namespace EstateWater.Simulation.Estate;

/// <summary>Tension wanted by stage: by fruit for blocks read by leaf, by block for those read otherwise.</summary>
public static class Targets
{
    private static readonly double[] Stages = [4, 27, 35, 38, 47];

    private static readonly Dictionary<(Measure Measure, bool IsWhite), (double Floor, double Ceiling)[]> Bands = new()
    {
        [(Measure.Leaf, false)] = [(5, 10), (9.5, 13.5), (10.5, 14.5), (5, 12)],
        [(Measure.Leaf, true)] = [(5, 10), (8, 12), (9, 12.5), (5, 11)],
        [(Measure.Stem, false)] = [(2, 7), (6.5, 10.5), (7.5, 11.5), (2, 9)],
        [(Measure.Stem, true)] = [(2, 7), (5, 9), (6, 9.5), (2, 8)],
        [(Measure.Predawn, false)] = [(0.3, 2), (1.5, 4.5), (2, 5.5), (0.5, 4)],
    };

    public static IReadOnlyList<TargetSpec> For(IReadOnlyList<BlockSpec> blocks) =>
    [
        .. Rows(null, "red", Measure.Leaf, false),
        .. Rows(null, "white", Measure.Leaf, true),
        .. blocks.Where(b => b.Measure != Measure.Leaf).SelectMany(b => Rows(b.Code, null, b.Measure, b.IsWhite)),
    ];

    private static IEnumerable<TargetSpec> Rows(string? block, string? fruit, Measure measure, bool isWhite) =>
        Bands[(measure, isWhite)].Select((band, i) => new TargetSpec(block, fruit, Stages[i], Stages[i + 1], measure, band.Floor, band.Ceiling));
}
