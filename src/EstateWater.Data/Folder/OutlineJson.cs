using System.Text.Json;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;

namespace EstateWater.Data.Folder;

/// <summary>Outlines as GeoJSON Polygon and MultiPolygon, longitude first (RFC 7946, 3.1.6 and 3.1.7).</summary>
internal static class OutlineJson
{
    private const int Wgs84 = 4326;
    private static readonly GeometryFactory Factory = new(new PrecisionModel(), Wgs84);

    /// <summary>Reads an outline; <see langword="null"/> after reporting what is wrong with it.</summary>
    public static Geometry? Read(JsonElement geometry, Action<string> report)
    {
        var problem = "is not there; a block needs a Polygon or MultiPolygon";
        if (geometry.ValueKind == JsonValueKind.Object
            && geometry.TryGetProperty("type", out var type)
            && geometry.TryGetProperty("coordinates", out var coordinates))
        {
            var outline = Outline(type, coordinates, out problem);
            if (outline is not null)
            {
                return outline;
            }
        }

        report(problem!);
        return null;
    }

    public static void Write(Utf8JsonWriter json, Geometry outline)
    {
        json.WriteStartObject();
        json.WriteString("type", outline.GeometryType);
        json.WritePropertyName("coordinates");
        if (outline is Polygon polygon)
        {
            WritePolygon(json, polygon);
        }
        else
        {
            json.WriteStartArray();
            foreach (var part in ((MultiPolygon)outline).Geometries.Cast<Polygon>())
            {
                WritePolygon(json, part);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static Geometry? Outline(JsonElement type, JsonElement coordinates, out string? problem)
    {
        Geometry? outline = type.ToString() switch
        {
            "Polygon" => ReadPolygon(coordinates, out problem),
            "MultiPolygon" => ReadMultiPolygon(coordinates, out problem),
            var other => Refuse<Geometry>($"is a {other}; a block needs a Polygon or MultiPolygon", out problem),
        };
        if (outline is null)
        {
            return null;
        }

        if (new IsValidOp(outline).ValidationError is { } error)
        {
            return Refuse<Geometry>($"is not a simple outline: {error.Message.ToLowerInvariant()} near longitude {error.Coordinate?.X}, latitude {error.Coordinate?.Y}", out problem);
        }

        return outline;
    }

    private static MultiPolygon? ReadMultiPolygon(JsonElement coordinates, out string? problem)
    {
        if (coordinates.ValueKind != JsonValueKind.Array || coordinates.GetArrayLength() == 0)
        {
            return Refuse<MultiPolygon>("has no polygon", out problem);
        }

        var polygons = new List<Polygon>();
        foreach (var element in coordinates.EnumerateArray())
        {
            if (ReadPolygon(element, out problem) is not { } polygon)
            {
                return null;
            }

            polygons.Add(polygon);
        }

        problem = null;
        return Factory.CreateMultiPolygon([.. polygons]);
    }

    private static Polygon? ReadPolygon(JsonElement coordinates, out string? problem)
    {
        if (coordinates.ValueKind != JsonValueKind.Array || coordinates.GetArrayLength() == 0)
        {
            return Refuse<Polygon>("has no ring; a polygon needs an outer ring", out problem);
        }

        var rings = new List<LinearRing>();
        foreach (var element in coordinates.EnumerateArray())
        {
            if (ReadRing(element, out problem) is not { } ring)
            {
                return null;
            }

            // The right-hand rule of RFC 7946: outer rings run counterclockwise, holes clockwise. Files with the other turn are read all the same.
            rings.Add(ring.IsCCW == (rings.Count == 0) ? ring : (LinearRing)ring.Reverse());
        }

        problem = null;
        return Factory.CreatePolygon(rings[0], [.. rings.Skip(1)]);
    }

    private static LinearRing? ReadRing(JsonElement positions, out string? problem)
    {
        if (positions.ValueKind != JsonValueKind.Array || positions.GetArrayLength() < 4)
        {
            return Refuse<LinearRing>("has a ring of fewer than four positions; the last repeats the first", out problem);
        }

        var ring = new Coordinate[positions.GetArrayLength()];
        var i = 0;
        foreach (var element in positions.EnumerateArray())
        {
            if (ReadPosition(element, out problem) is not { } position)
            {
                return null;
            }

            ring[i++] = position;
        }

        if (!ring[0].Equals2D(ring[^1]))
        {
            return Refuse<LinearRing>("has a ring that is not closed; the last position must repeat the first", out problem);
        }

        problem = null;
        return Factory.CreateLinearRing(ring);
    }

    private static Coordinate? ReadPosition(JsonElement position, out string? problem)
    {
        if (position.ValueKind != JsonValueKind.Array
            || position.GetArrayLength() < 2
            || position[0].ValueKind != JsonValueKind.Number
            || position[1].ValueKind != JsonValueKind.Number)
        {
            return Refuse<Coordinate>($"has a position that is not [longitude, latitude]", out problem);
        }

        var (longitude, latitude) = (position[0].GetDouble(), position[1].GetDouble());
        if (!(Math.Abs(longitude) <= 180 && Math.Abs(latitude) <= 90))
        {
            return Refuse<Coordinate>(
                $"has the position {position.GetRawText()}; longitude must be -180 to 180 and latitude -90 to 90, in that order, in degrees on WGS 84",
                out problem);
        }

        problem = null;
        return new Coordinate(longitude, latitude);
    }

    private static T? Refuse<T>(string why, out string? problem)
        where T : class
    {
        problem = why;
        return null;
    }

    private static void WritePolygon(Utf8JsonWriter json, Polygon polygon)
    {
        json.WriteStartArray();
        WriteRing(json, polygon.ExteriorRing);
        foreach (var hole in polygon.InteriorRings)
        {
            WriteRing(json, hole);
        }

        json.WriteEndArray();
    }

    private static void WriteRing(Utf8JsonWriter json, LineString ring)
    {
        json.WriteStartArray();
        foreach (var position in ring.Coordinates)
        {
            json.WriteStartArray();
            json.WriteNumberValue(position.X);
            json.WriteNumberValue(position.Y);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }
}
