using System.Text.Encodings.Web;
using System.Text.Json;
using EstateWater.Simulation.Estate;

namespace EstateWater.Simulation.Folder;

/// <summary>The blocks as GeoJSON (RFC 7946), one feature a line so that a change of one block reads as one.</summary>
internal static class BlockFile
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write(EstateSpec spec, string folder)
    {
        var features = spec.Blocks.Select(b => JsonSerializer.Serialize(
            new { type = "Feature", geometry = Geometry(b.Outline, spec), properties = Properties(b) }, Plain));
        var text = "{\"type\":\"FeatureCollection\",\"features\":[\n" + string.Join(",\n", features) + "\n]}\n";
        File.WriteAllText(Path.Combine(folder, "blocks.geojson"), text);
    }

    private static object Geometry(Outline outline, EstateSpec spec)
    {
        double[][][] rings = [.. outline.Rings.Select(r => Outline.InDegrees(r, spec.Site).Select(p => new[] { p.Longitude, p.Latitude }).ToArray())];
        return rings.Length == 1
            ? new { type = "Polygon", coordinates = (object)rings }
            : new { type = "MultiPolygon", coordinates = (object)rings.Select(r => new[] { r }).ToArray() };
    }

    private static Dictionary<string, object> Properties(BlockSpec b)
    {
        (string Name, object? Value)[] all =
        [
            ("block", b.Code), ("name", b.Name), ("variety", b.Variety), ("rootstock", b.Rootstock),
            ("fruit", b.IsWhite ? "white" : "red"), ("planted_year", b.PlantedYear), ("station", b.Station), ("valve", b.Valve),
            ("row_spacing_m", b.RowSpacingM), ("vine_spacing_m", b.VineSpacingM), ("emitters_per_vine", b.EmittersPerVine),
            ("emitter_flow_l_per_h", b.EmitterFlowLPerH), ("emission_uniformity", b.EmissionUniformity),
            ("root_depth_m", b.RootDepthM), ("available_water_mm_per_m", b.AvailableWaterMmPerM),
            ("wetted_fraction", b.WettedFraction), ("shaded_fraction", b.ShadedFraction),
            ("target_shoot_length_cm", b.TargetShootLengthCm), ("priority", b.Priority),
        ];
        return all.Where(p => p.Value is not null).ToDictionary(p => p.Name, p => p.Value!);
    }
}
