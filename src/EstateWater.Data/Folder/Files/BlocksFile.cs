using System.Text.Json;
using EstateWater.Data.Geodesy;
using EstateWater.Data.Model;
using NetTopologySuite.Geometries;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>blocks.geojson</c>: the blocks and their outlines (RFC 7946).</summary>
internal static class BlocksFile
{
    public const string Name = "blocks.geojson";

    private static readonly Column Code = new("block") { IsRequired = true };
    private static readonly Column BlockName = new("name");
    private static readonly Column Variety = new("variety");
    private static readonly Column Rootstock = new("rootstock");
    private static readonly Column Fruit = new("fruit") { IsRequired = true };
    private static readonly Column PlantedYear = new("planted_year") { Min = 1700, Max = 2199 };
    private static readonly Column Station = new("station") { IsRequired = true };
    private static readonly Column Valve = new("valve") { IsRequired = true };
    private static readonly Column RowSpacing = new("row_spacing_m") { IsRequired = true, Min = 0, MinExcluded = true, Max = 20 };
    private static readonly Column VineSpacing = new("vine_spacing_m") { IsRequired = true, Min = 0, MinExcluded = true, Max = 20 };
    private static readonly Column Emitters = new("emitters_per_vine") { IsRequired = true, Min = 0, MinExcluded = true, Max = 100 };
    private static readonly Column EmitterFlow = new("emitter_flow_l_per_h") { IsRequired = true, Min = 0, MinExcluded = true, Max = 1000 };
    private static readonly Column Uniformity = new("emission_uniformity") { Min = 0, MinExcluded = true, Max = 1, Hint = "write 0.88 for 88 %" };
    private static readonly Column RootDepth = new("root_depth_m") { IsRequired = true, Min = 0, MinExcluded = true, Max = 20 };
    private static readonly Column AvailableWater = new("available_water_mm_per_m") { IsRequired = true, Min = 0, MinExcluded = true, Max = 1000 };
    private static readonly Column WettedFraction = new("wetted_fraction") { Min = 0, MinExcluded = true, Max = 1, Hint = "write 0.35 for 35 %" };
    private static readonly Column ShadedFraction = new("shaded_fraction") { Min = 0, Max = 1, Hint = "write 0.35 for 35 %" };
    private static readonly Column TargetShootLength = new("target_shoot_length_cm") { Min = 0, MinExcluded = true, Max = 1000 };
    private static readonly Column Priority = new("priority") { Min = 1, Max = 5 };

    private static readonly Column[] Columns =
    [
        Code, BlockName, Variety, Rootstock, Fruit, PlantedYear, Station, Valve, RowSpacing, VineSpacing, Emitters, EmitterFlow,
        Uniformity, RootDepth, AvailableWater, WettedFraction, ShadedFraction, TargetShootLength, Priority,
    ];

    public static List<Block> Read(FolderScan scan)
    {
        var blocks = new List<Block>();
        if (!FeatureCollection.Read(scan, Name, Columns, (members, outline) => blocks.Add(ReadBlock(scan, members, outline))))
        {
            scan.Blocks.IsComplete = false;
        }

        return blocks;
    }

    public static void Write(FolderOutput output, IReadOnlyList<Block> blocks) =>
        FeatureCollection.Write(output, Name, blocks, b => b.Outline, WriteProperties);

    private static Block ReadBlock(FolderScan scan, JsonMembers members, Geometry? outline) => new()
    {
        Code = members.NewCode(Code, scan.Blocks),
        Name = members.Text(BlockName),
        Variety = members.Text(Variety),
        Rootstock = members.Text(Rootstock),
        Fruit = members.Choice<FruitColour>(Fruit) ?? default,
        PlantedYear = members.WholeNumber(PlantedYear),
        StationCode = members.Code(Station, scan.Stations) ?? "",
        ValveCode = members.Code(Valve, scan.Valves) ?? "",
        RowSpacingM = members.Number(RowSpacing) ?? 0,
        VineSpacingM = members.Number(VineSpacing) ?? 0,
        EmittersPerVine = members.Number(Emitters) ?? 0,
        EmitterFlowLPerH = members.Number(EmitterFlow) ?? 0,
        EmissionUniformity = members.Number(Uniformity),
        RootDepthM = members.Number(RootDepth) ?? 0,
        AvailableWaterMmPerM = members.Number(AvailableWater) ?? 0,
        WettedFraction = members.Number(WettedFraction),
        ShadedFraction = members.Number(ShadedFraction),
        TargetShootLengthCm = members.Number(TargetShootLength),
        Priority = members.WholeNumber(Priority) ?? 3,
        Outline = outline ?? Polygon.Empty,
        AreaM2 = outline is null ? 0 : GeodesicArea.SquareMetres(outline),
    };

    private static void WriteProperties(Utf8JsonWriter json, Block b)
    {
        Text(Code, b.Code);
        Text(BlockName, b.Name);
        Text(Variety, b.Variety);
        Text(Rootstock, b.Rootstock);
        Text(Fruit, Words<FruitColour>.Of(b.Fruit));
        Number(PlantedYear, b.PlantedYear);
        Text(Station, b.StationCode);
        Text(Valve, b.ValveCode);
        Number(RowSpacing, b.RowSpacingM);
        Number(VineSpacing, b.VineSpacingM);
        Number(Emitters, b.EmittersPerVine);
        Number(EmitterFlow, b.EmitterFlowLPerH);
        Number(Uniformity, b.EmissionUniformity);
        Number(RootDepth, b.RootDepthM);
        Number(AvailableWater, b.AvailableWaterMmPerM);
        Number(WettedFraction, b.WettedFraction);
        Number(ShadedFraction, b.ShadedFraction);
        Number(TargetShootLength, b.TargetShootLengthCm);
        Number(Priority, b.Priority);

        void Text(Column column, string? value)
        {
            if (value is not null)
            {
                json.WriteString(column.Name, value);
            }
        }

        void Number(Column column, double? value)
        {
            if (value is { } number)
            {
                json.WriteNumber(column.Name, number);
            }
        }
    }
}
