using System.Buffers;

namespace EstateWater.Data.Folder;

/// <summary>A row being written, cell by cell (RFC 4180); an empty cell for what was not measured.</summary>
internal sealed class CsvOutputRow(TextWriter writer, TimeZoneInfo zone)
{
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",\"\r\n");
    private bool started;

    public CsvOutputRow Text(string? text)
    {
        if (started)
        {
            writer.Write(',');
        }

        started = true;
        writer.Write(text.AsSpan().ContainsAny(NeedsQuotes) ? $"\"{text!.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text);
        return this;
    }

    public CsvOutputRow Number(double? number) => Text(number is { } n ? CellText.Number(n) : null);

    public CsvOutputRow Date(DateOnly date) => Text(CellText.Date(date));

    public CsvOutputRow TimeOfDay(TimeOnly time) => Text(CellText.TimeOfDay(time));

    public CsvOutputRow Instant(DateTimeOffset instant) => Text(CellText.Instant(instant, zone));

    public CsvOutputRow Word<T>(T? choice)
        where T : struct, Enum => Text(choice is { } c ? Words<T>.Of(c) : null);

    public void End()
    {
        writer.Write('\n');
        started = false;
    }
}
