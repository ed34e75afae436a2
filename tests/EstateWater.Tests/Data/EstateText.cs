using System.Globalization;
using EstateWater.Data.Model;

namespace EstateWater.Tests.Data;

/// <summary>An estate as lines of text, every value exact, without the database's own numbers: equal estates have equal lines.</summary>
internal static class EstateText
{
    public static string Of(EstateContents contents) => string.Join('\n', typeof(EstateContents).GetProperties().SelectMany(list => Lines(list.Name, list.GetValue(contents)!)));

    private static IEnumerable<string> Lines(string name, object value) => value is System.Collections.IEnumerable rows
        ? rows.Cast<object>().Select(row => Line(name, row))
        : [Line(name, value)];

    private static string Line(string name, object row) => name + " " + string.Join(" ", row.GetType().GetProperties()
        .Where(p => p.Name is not "Id" and not "EqualityContract")
        .Select(p => $"{p.Name}={Value(p.GetValue(row))}"));

    private static string? Value(object? value) => value switch
    {
        null => "none",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        DateTimeOffset instant => instant.ToString("O", CultureInfo.InvariantCulture),
        NetTopologySuite.Geometries.Geometry outline => $"{outline.SRID} {outline.AsText()}",
        _ => Convert.ToString(value, CultureInfo.InvariantCulture),
    };
}
