using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace EstateWater.Data.Folder;

/// <summary>A folder being written.</summary>
internal sealed class FolderOutput(string folder, TimeZoneInfo zone)
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static JsonWriterOptions JsonForm(bool indented) =>
        new() { Indented = indented, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a CSV file; none when there are no rows.</summary>
    public void Csv<T>(string file, Column[] columns, IReadOnlyList<T> items, Func<CsvOutputRow, T, CsvOutputRow> cells)
    {
        if (items.Count == 0)
        {
            return;
        }

        using var writer = new StreamWriter(Path.Combine(folder, file), append: false, Utf8);
        var row = new CsvOutputRow(writer, zone);
        foreach (var column in columns)
        {
            row.Text(column.Name);
        }

        row.End();
        foreach (var item in items)
        {
            cells(row, item).End();
        }
    }

    public void Json(string file, bool indented, Action<Utf8JsonWriter> write)
    {
        using var stream = File.Create(Path.Combine(folder, file));
        using (var json = new Utf8JsonWriter(stream, JsonForm(indented)))
        {
            write(json);
        }

        stream.Write("\n"u8);
    }
}
