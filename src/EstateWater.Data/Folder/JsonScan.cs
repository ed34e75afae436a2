using System.Text.Json;

namespace EstateWater.Data.Folder;

/// <summary>A JSON file being read: its bytes, and the lines things stand on.</summary>
internal sealed class JsonScan
{
    private readonly FolderScan scan;
    private readonly string file;

    private JsonScan(FolderScan scan, string file, byte[] bytes)
    {
        this.scan = scan;
        this.file = file;
        Bytes = bytes;
    }

    public byte[] Bytes { get; }

    /// <summary>Opens a file that must be there; <see langword="null"/> when it is not, or is not UTF-8.</summary>
    public static JsonScan? Open(FolderScan scan, string file)
    {
        var before = scan.Defects.Count;
        if (scan.Bytes(file) is { } bytes)
        {
            return scan.ReportInvalidUtf8(file, bytes) ? null : new(scan, file, bytes);
        }

        if (scan.Defects.Count == before)
        {
            scan.Report(file, 1, Defect.WholeFile, "is not there; an estate folder needs it");
        }

        return null;
    }

    public int LineAt(long offset) => TextFile.LineAt(Bytes, offset);

    /// <summary>The line of a member of the outermost object; 1 when it has none of that name.</summary>
    public int MemberLine(string name)
    {
        var reader = new Utf8JsonReader(Bytes);
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 1 && reader.ValueTextEquals(name))
            {
                return LineAt(reader.TokenStartIndex);
            }
        }

        return 1;
    }

    public void Report(JsonException broken) =>
        scan.Report(file, (int)(broken.LineNumber ?? 0) + 1, Defect.WholeFile, $"is not JSON from here on: {FirstSentence(broken.Message)}");

    private static string FirstSentence(string message) => message.Split(" LineNumber:")[0];
}
