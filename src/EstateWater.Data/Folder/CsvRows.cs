using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace EstateWater.Data.Folder;

/// <summary>The rows of one CSV file, its header checked.</summary>
internal sealed class CsvRows : IDisposable
{
    private readonly FolderScan scan;
    private readonly string file;
    private readonly CsvParser parser;
    private readonly Dictionary<Column, int> positions;
    private readonly int width;
    private bool badQuote;
    private int nextLine;

    public CsvRows(FolderScan scan, string file, string text, Column[] columns)
    {
        this.scan = scan;
        this.file = file;
        parser = new CsvParser(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = ",",
            IgnoreBlankLines = false,
            CacheFields = true,
            BadDataFound = _ => badQuote = true,
        });
        var names = ReadRecord() ? Enumerable.Range(0, parser.Count).Select(i => parser[i].Trim()).ToArray() : [];
        nextLine = parser.RawRow + 1;
        width = names.Length;
        positions = CsvHeader.Match(scan, file, names, columns);
    }

    public bool Has(Column column) => positions.ContainsKey(column);

    /// <summary>Whether every row so far could be taken apart into cells.</summary>
    public bool IsComplete { get; private set; } = true;

    public IEnumerable<CsvRow> Read()
    {
        if (positions.Count == 0)
        {
            yield break;
        }

        var row = new CsvRow(scan, file, parser, positions);
        while (ReadRecord())
        {
            row.Line = nextLine;
            nextLine = parser.RawRow + 1;
            if (IsBlank())
            {
                continue;
            }

            if (IsWellFormed(row.Line))
            {
                yield return row;
            }
            else
            {
                IsComplete = false;
            }
        }
    }

    public void Dispose() => parser.Dispose();

    private bool ReadRecord()
    {
        badQuote = false;
        return parser.Read();
    }

    private bool IsBlank() => parser.Count == 0 || (parser.Count == 1 && string.IsNullOrWhiteSpace(parser[0]));

    private bool IsWellFormed(int line)
    {
        for (var i = 0; i < parser.Count; i++)
        {
            // The parser judges quotes when a cell is asked for.
            _ = parser[i];
        }

        if (badQuote)
        {
            scan.Report(file, line, Defect.WholeRow, "has a quotation mark in the wrong place; enclose the whole cell in \" and double those inside it");
            return false;
        }

        if (parser.Count != width)
        {
            var hint = parser.Count > width ? "; a cell with a comma must be in quotation marks, and numbers use a point" : "";
            scan.Report(file, line, Defect.WholeRow, $"has {parser.Count} cells where the header has {width}{hint}");
            return false;
        }

        return true;
    }
}
