using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;
using static EstateWater.Simulation.Estate.GroundKind;

namespace EstateWater.Simulation.Demo;

/// <summary>The demo's blocks. Names are invented; varieties and rootstocks are the trade's common ones.</summary>
internal static class DemoBlocks
{
    private sealed record Line(string Code, string Name, string Variety, string Rootstock, int Planted, GroundKind Ground, double Shade, int Valve, int Priority = 3, Measure Measure = Measure.Leaf);

    private static readonly ValleyMap.Band[] Bands =
    [
        new(205, 312, 0.4, [60, 300, 515, 745, 930, 1190, 1405, 1640]),
        new(62, 186, 1.9, [0, 215, 470, 660, 905, 1105, 1340, 1530, 1800]),
        new(-186, -58, 3.1, [20, 260, 445, 690, 880, 1120, 1300, 1545, 1730, 1960]),
        new(-322, -204, 4.6, [120, 365, 580, 765, 1030, 1245, 1450, 1700, 1890]),
        new(-430, -340, 5.5, [480, 700, 905, 1080, 1260]),
    ];

    private static readonly Line[] Lines =
    [
        new("A1", "Kestrel", "Shiraz", "Ramsey", 2004, StonySlope, 0.33, 1, 4),
        new("A2", "Kestrel Top", "Shiraz", "1103 Paulsen", 2004, StonySlope, 0.31, 1, 4),
        new("A3", "Flintface", "Grenache", "own roots", 1968, StonySlope, 0.28, 2, 5),
        new("A4", "Thimble", "Mataro", "own roots", 1974, StonySlope, 0.29, 3),
        new("A5", "Long Slate", "Cabernet Sauvignon", "110 Richter", 2009, StonySlope, 0.33, 4, 4, Measure.Stem),
        new("A6", "Lantern", "Cabernet Sauvignon", "110 Richter", 2009, ThinSand, 0.35, 5, 3, Measure.Stem),
        new("A7", "Larkrise", "Tempranillo", "1103 Paulsen", 2013, SandyRise, 0.33, 6),
        new("B1", "Ford", "Shiraz", "Schwarzmann", 1999, RedLoam, 0.37, 7),
        new("B2", "Ford East", "Shiraz", "Schwarzmann", 1999, RedLoam, 0.37, 7),
        new("B3", "Cart Shed", "Merlot", "1103 Paulsen", 2001, RedLoam, 0.36, 8),
        new("B4", "Copper", "Cabernet Sauvignon", "Ramsey", 1996, RedLoam, 0.36, 9, 4),
        new("B5", "Bellwether", "Shiraz", "Ramsey", 2006, RedLoam, 0.37, 10),
        new("B6", "Tinker", "Merlot", "140 Ruggeri", 2001, RedLoam, 0.36, 11, 2, Measure.Stem),
        new("B7", "Half Moon", "Tempranillo", "1103 Paulsen", 2014, RedLoam, 0.34, 12),
        new("B8", "Brickfield", "Cabernet Sauvignon", "Ramsey", 1998, RedLoam, 0.36, 12),
        new("C1", "Willow Bend", "Chardonnay", "Schwarzmann", 2002, DeepFlat, 0.40, 13),
        new("C2", "Otter", "Chardonnay", "Schwarzmann", 2002, DeepFlat, 0.39, 13),
        new("C3", "Footbridge", "Riesling", "5C Teleki", 1994, DeepFlat, 0.37, 14, 4, Measure.Stem),
        new("C4", "Heron", "Shiraz", "Ramsey", 2007, DeepFlat, 0.38, 15, 2),
        new("C5", "Heron Low", "Shiraz", "Ramsey", 2007, DeepFlat, 0.36, 16, 2),
        new("C6", "Mill Race", "Semillon", "5C Teleki", 1991, DeepFlat, 0.38, 17),
        new("C7", "Sedge", "Merlot", "140 Ruggeri", 2003, DeepFlat, 0.41, 18, 1),
        new("C8", "Saltlick", "Fiano", "1103 Paulsen", 2016, RedLoam, 0.36, 19, 3, Measure.Stem),
        new("C9", "Boundary", "Fiano", "1103 Paulsen", 2016, RedLoam, 0.36, 19, 3, Measure.Stem),
        new("D1", "Drystone", "Grenache", "own roots", 1971, SandyRise, 0.30, 20, 5),
        new("D2", "Drystone Back", "Grenache", "own roots", 1971, SandyRise, 0.29, 20, 5),
        new("D3", "Anvil", "Shiraz", "1103 Paulsen", 2010, StonySlope, 0.33, 21, 4),
        new("D4", "Hammer", "Shiraz", "1103 Paulsen", 2010, StonySlope, 0.33, 22, 4),
        new("D5", "Tongs", "Shiraz", "1103 Paulsen", 2010, ThinSand, 0.34, 23, 4),
        new("D6", "Rook", "Mataro", "Ramsey", 2005, StonySlope, 0.31, 24, 3, Measure.Predawn),
        new("D7", "Jackdaw", "Mataro", "Ramsey", 2005, RedLoam, 0.33, 25, 3, Measure.Predawn),
        new("D8", "Gatepost", "Cabernet Sauvignon", "110 Richter", 2012, RedLoam, 0.34, 25, 3, Measure.Stem),
        new("E1", "Cradle", "Riesling", "5C Teleki", 1997, RedLoam, 0.34, 26, 4, Measure.Stem),
        new("E2", "Cradle Head", "Riesling", "5C Teleki", 1997, StonySlope, 0.32, 26, 4, Measure.Stem),
        new("E3", "Windbreak", "Sauvignon Blanc", "Schwarzmann", 2011, RedLoam, 0.36, 27),
        new("E4", "Fledgling", "Shiraz", "1103 Paulsen", 2025, RedLoam, 0.06, 28, 3),
    ];

    private static readonly HashSet<string> Tubes = ["A1", "A5", "B1", "B4", "B6", "C1", "C4", "C7", "D1", "D4", "D7", "E1"];

    private static readonly HashSet<string> Whites = ["Chardonnay", "Riesling", "Semillon", "Fiano", "Sauvignon Blanc"];

    /// <summary>All blocks, drawn from the seed.</summary>
    public static IReadOnlyList<BlockSpec> Draw(ulong seed) =>
        [.. Bands.SelectMany((band, b) => Lines.Where(l => l.Code[0] == 'A' + b).Select((line, i) => Block(line, band, i, Dice.Of(seed, "block", line.Code))))];

    /// <summary>The code of a numbered valve.</summary>
    public static string Valve(int number) => FormattableString.Invariant($"V{number:00}");

    private static BlockSpec Block(Line line, ValleyMap.Band band, int index, Dice dice)
    {
        var block = new BlockSpec
        {
            Code = line.Code,
            Name = line.Name,
            Variety = line.Variety,
            Rootstock = line.Rootstock,
            IsWhite = Whites.Contains(line.Variety),
            PlantedYear = line.Planted,
            Station = line.Code[0] is 'B' or 'C' ? "creek" : "ridge",
            Valve = Valve(line.Valve),
            RowSpacingM = line.Planted < 1980 ? 3.3 : line.Planted < 2005 ? 3.0 : 2.75,
            VineSpacingM = line.Planted < 1980 ? 2.1 : 1.8,
            EmittersPerVine = line.Ground is SandyRise or ThinSand || line.Planted < 1980 ? 3 : 2,
            EmitterFlowLPerH = line.Ground == DeepFlat ? 1.6 : 2.3,
            Priority = line.Priority,
            Measure = line.Measure,
            HasTube = Tubes.Contains(line.Code),
            IsRead = line.Planted < 2024,
            Outline = line.Code == "C6" ? ValleyMap.SplitBlock(band, index, 16) : ValleyMap.Block(band, index),
            Truth = BlockMaker.Truth(line.Ground, line.Shade, dice),
        };
        return BlockMaker.Declared(block, dice);
    }
}
