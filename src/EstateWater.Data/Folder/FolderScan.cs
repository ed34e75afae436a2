using EstateWater.Data.Folder.Files;

namespace EstateWater.Data.Folder;

/// <summary>One reading of a folder: the defects found so far, the codes known so far and the estate's time zone.</summary>
internal sealed class FolderScan(string folder)
{
    public List<Defect> Defects { get; } = [];

    /// <summary>The estate's zone; UTC until <c>estate.json</c> has been read.</summary>
    public TimeZoneInfo TimeZone { get; set; } = TimeZoneInfo.Utc;

    public CodeSet Stations { get; } = new("station", StationsFile.Name);

    public CodeSet Sources { get; } = new("water source", WaterSourcesFile.Name);

    public CodeSet Valves { get; } = new("valve", ValvesFile.Name);

    public CodeSet Blocks { get; } = new("block", BlocksFile.Name);

    public void Report(string file, int line, string column, string message) => Defects.Add(new(file, line, OneLine(column), OneLine(message)));

    /// <summary>The bytes of a file without a byte-order mark; <see langword="null"/> when it is not there or cannot be opened.</summary>
    public byte[]? Bytes(string file)
    {
        var path = Path.Combine(folder, file);
        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            return [.. TextFile.WithoutByteOrderMark(File.ReadAllBytes(path))];
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            Report(file, 1, Defect.WholeFile, $"cannot be opened: {failure.Message}");
            return null;
        }
    }

    /// <summary>Reports the first byte that is not UTF-8; true when there is one.</summary>
    public bool ReportInvalidUtf8(string file, ReadOnlySpan<byte> bytes)
    {
        if (TextFile.FirstInvalidByte(bytes) is not { } offset)
        {
            return false;
        }

        Report(file, TextFile.LineAt(bytes, offset), Defect.WholeFile, "is not UTF-8 from here on; save the file as UTF-8");
        return true;
    }

    /// <summary>The rows of a CSV file with these columns; none when the file is not there or its header cannot be used.</summary>
    public IEnumerable<CsvRow> Rows(string file, Column[] columns, CodeSet? defines = null)
    {
        if (Bytes(file) is not { } bytes)
        {
            yield break;
        }

        ReportInvalidUtf8(file, bytes);
        using var rows = new CsvRows(this, file, TextFile.Decode(bytes), columns);
        foreach (var row in rows.Read())
        {
            yield return row;
        }

        if (!rows.IsComplete || !rows.Has(columns[0]))
        {
            defines?.IsComplete = false;
        }
    }

    // What a file holds may hold line breaks; a defect is one line.
    private static string OneLine(string text) =>
        text.Any(char.IsControl) ? string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)) : text;
}
