using System.Globalization;
using System.Text;

namespace EstateWater.Simulation.Folder;

/// <summary>Writes one CSV file (RFC 4180, UTF-8, LF): an empty cell is "not measured".</summary>
public sealed class CsvFile
{
    private readonly StringBuilder _text = new();
    private readonly int _columns;

    public CsvFile(string header)
    {
        _columns = header.Split(',').Length;
        _text.Append(header).Append('\n');
    }

    public void Row(params ReadOnlySpan<object?> cells)
    {
        if (cells.Length != _columns)
        {
            throw new ArgumentException($"{cells.Length} cells for {_columns} columns.", nameof(cells));
        }

        for (var i = 0; i < cells.Length; i++)
        {
            _text.Append(i == 0 ? "" : ",").Append(Cell(cells[i]));
        }

        _text.Append('\n');
    }

    public void Save(string folder, string file) => File.WriteAllText(Path.Combine(folder, file), _text.ToString());

    /// <summary>A number at so many decimals, without needless zeros.</summary>
    public static string Number(double value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture) is var text && text == "-0" ? "0" : text;

    private static string Cell(object? value)
    {
        var text = value switch
        {
            null => "",
            DateTimeOffset instant => instant.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture),
            DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            TimeOnly time => time.ToString("HH:mm", CultureInfo.InvariantCulture),
            IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString()!,
        };
        return text.IndexOfAny([',', '"', '\n']) < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
