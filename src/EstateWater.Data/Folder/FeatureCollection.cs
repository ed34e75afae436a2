using System.Text.Json;
using NetTopologySuite.Geometries;

namespace EstateWater.Data.Folder;

/// <summary>A GeoJSON feature collection of outlines with properties (RFC 7946).</summary>
internal static class FeatureCollection
{
    /// <summary>Reads every feature; false when the file or a feature could not be read, so that nothing follows from what is missing.</summary>
    public static bool Read(FolderScan scan, string file, Column[] columns, Action<JsonMembers, Geometry?> feature)
    {
        if (JsonScan.Open(scan, file) is not { } json)
        {
            return false;
        }

        try
        {
            return ReadMembers(scan, file, json, (line, element) => ReadFeature(scan, file, line, element, columns, feature));
        }
        catch (JsonException broken)
        {
            json.Report(broken);
            return false;
        }
    }

    /// <summary>Writes one feature a line.</summary>
    public static void Write<T>(
        FolderOutput output, string file, IReadOnlyList<T> items, Func<T, Geometry> outline, Action<Utf8JsonWriter, T> properties)
    {
        output.Json(file, indented: false, json =>
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            json.WriteStartArray("features");
            foreach (var item in items)
            {
                json.WriteRawValue(Line(w => WriteFeature(w, outline(item), p => properties(p, item))), skipInputValidation: true);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    private static byte[] Line(Action<Utf8JsonWriter> write)
    {
        using var line = new MemoryStream("\n"u8.Length);
        line.Write("\n"u8);
        using (var json = new Utf8JsonWriter(line, FolderOutput.JsonForm(indented: false)))
        {
            write(json);
        }

        return line.ToArray();
    }

    private static void WriteFeature(Utf8JsonWriter json, Geometry outline, Action<Utf8JsonWriter> properties)
    {
        json.WriteStartObject();
        json.WriteString("type", "Feature");
        json.WriteStartObject("properties");
        properties(json);
        json.WriteEndObject();
        json.WritePropertyName("geometry");
        OutlineJson.Write(json, outline);
        json.WriteEndObject();
    }

    private static bool ReadMembers(FolderScan scan, string file, JsonScan json, Func<int, JsonElement, bool> feature)
    {
        var reader = new Utf8JsonReader(json.Bytes);
        string? type = null;
        var (hasFeatures, isComplete) = (false, true);
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
        {
            scan.Report(file, 1, Defect.WholeFile, "must be a GeoJSON FeatureCollection");
            return false;
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var (isType, isFeatures, isCrs) = (reader.ValueTextEquals("type"), reader.ValueTextEquals("features"), reader.ValueTextEquals("crs"));
            var line = json.LineAt(reader.TokenStartIndex);
            reader.Read();
            if (isFeatures && reader.TokenType == JsonTokenType.StartArray)
            {
                hasFeatures = true;
                isComplete &= ReadFeatures(ref reader, json, feature);
                continue;
            }

            using var value = JsonDocument.ParseValue(ref reader);
            type = isType ? value.RootElement.ToString() : type;
            if (isCrs && !value.RootElement.GetRawText().Contains("CRS84", StringComparison.Ordinal))
            {
                scan.Report(file, line, "crs", "is not WGS 84; write longitude and latitude on WGS 84 and leave crs out");
            }
        }

        // Reads to the end, so that anything after the collection is found.
        while (reader.Read())
        {
        }

        if (type != "FeatureCollection" || !hasFeatures)
        {
            scan.Report(file, 1, Defect.WholeFile, "must be a GeoJSON FeatureCollection with an array of features");
        }

        return hasFeatures && isComplete;
    }

    private static bool ReadFeatures(ref Utf8JsonReader reader, JsonScan json, Func<int, JsonElement, bool> feature)
    {
        // Counts lines onward from the last feature: a long file stays linear.
        var (line, counted, isComplete) = (1, 0, true);
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            var start = (int)reader.TokenStartIndex;
            line += json.Bytes.AsSpan(counted, start - counted).Count((byte)'\n');
            counted = start;
            using var element = JsonDocument.ParseValue(ref reader);
            isComplete &= feature(line, element.RootElement);
        }

        return isComplete;
    }

    private static bool ReadFeature(
        FolderScan scan, string file, int line, JsonElement element, Column[] columns, Action<JsonMembers, Geometry?> feature)
    {
        if (Member(element, "type") is not { ValueKind: JsonValueKind.String } type || !type.ValueEquals("Feature"))
        {
            scan.Report(file, line, "type", "is not a Feature");
            return false;
        }

        if (Member(element, "properties") is not { ValueKind: JsonValueKind.Object } properties)
        {
            scan.Report(file, line, "properties", "is not there; a block needs its properties");
            return false;
        }

        try
        {
            var outline = OutlineJson.Read(Member(element, "geometry") ?? default, problem => scan.Report(file, line, "geometry", problem));
            feature(new JsonMembers(scan, file, _ => line, properties, columns), outline);
            return true;
        }
        catch (InvalidOperationException)
        {
            // How the reader answers an escape that is half a character, for example \ud800.
            scan.Report(file, line, "properties", "has an escaped character that is not Unicode");
            return false;
        }
    }

    private static JsonElement? Member(JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) ? value : null;
}
