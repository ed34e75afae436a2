using CsvHelper;

namespace EstateWater.Data.Folder;

/// <summary>One row; its cells by column. What cannot be used is reported and comes back as a default.</summary>
internal sealed class CsvRow(FolderScan scan, string file, CsvParser parser, Dictionary<Column, int> positions)
{
    /// <summary>The line it begins at.</summary>
    public int Line { get; set; }

    public void Report(Column column, string message) => scan.Report(file, Line, column.Name, message);

    /// <summary>Free text as it stands; <see langword="null"/> when empty.</summary>
    public string? Note(Column column)
    {
        var text = positions.TryGetValue(column, out var position) ? parser[position] : "";
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        Check(column, column.ProblemWith(text));
        return text;
    }

    /// <summary>A short text without surrounding spaces; <see langword="null"/> when empty.</summary>
    public string? TextOrNull(Column column)
    {
        if (Note(column)?.Trim() is not { } text)
        {
            // A column missing altogether was reported once, with the header.
            Check(column, column.IsRequired && positions.ContainsKey(column) ? "is empty and is required" : null);
            return null;
        }

        Check(column, text.AsSpan().ContainsAnyInRange('\0', '\x1f') ? "has a control character or line break; remove it" : null);
        return text;
    }

    public string Text(Column column) => TextOrNull(column) ?? "";

    /// <summary>A code that another file defines.</summary>
    public string? CodeOrNull(Column column, CodeSet codes)
    {
        var code = TextOrNull(column);
        Check(column, code is null ? null : codes.ProblemWith(code));
        return code;
    }

    public string Code(Column column, CodeSet codes) => CodeOrNull(column, codes) ?? "";

    /// <summary>A code that this file defines, once.</summary>
    public string NewCode(Column column, CodeSet codes)
    {
        var code = Text(column);
        Check(column, codes.Add(code));
        return code;
    }

    public double? NumberOrNull(Column column)
    {
        if (TextOrNull(column) is not { } text)
        {
            return null;
        }

        Check(column, CellText.TryNumber(text, out var number, out var problem) ? column.ProblemWith(number) : problem);
        return number;
    }

    public double Number(Column column) => NumberOrNull(column) ?? 0;

    public int? WholeNumberOrNull(Column column)
    {
        if (NumberOrNull(column) is not { } number)
        {
            return null;
        }

        Check(column, number % 1 == 0 ? null : "must be a whole number");
        return (int)number;
    }

    public T? ChoiceOrNull<T>(Column column)
        where T : struct, Enum
    {
        if (TextOrNull(column) is not { } text)
        {
            return null;
        }

        var choice = Words<T>.Find(text);
        Check(column, choice is null ? $"'{text}' is not one of {Words<T>.List}" : null);
        return choice;
    }

    public T Choice<T>(Column column)
        where T : struct, Enum => ChoiceOrNull<T>(column) ?? default;

    public DateOnly Date(Column column)
    {
        var text = TextOrNull(column);
        var date = default(DateOnly);
        Check(column, text is null || CellText.TryDate(text, out date, out var problem) ? null : problem);
        return date;
    }

    public TimeOnly TimeOfDay(Column column)
    {
        var text = TextOrNull(column);
        var time = default(TimeOnly);
        Check(column, text is null || CellText.TryTimeOfDay(text, out time, out var problem) ? null : problem);
        return time;
    }

    /// <summary>An instant, on the estate's clock.</summary>
    public DateTimeOffset Instant(Column column)
    {
        var text = TextOrNull(column);
        var instant = default(DateTimeOffset);
        if (text is null)
        {
            return instant;
        }

        Check(column, CellText.TryInstant(text, out instant, out var problem) ? null : problem);
        return problem is null ? TimeZoneInfo.ConvertTime(instant, scan.TimeZone) : instant;
    }

    /// <summary>Reports a key that an earlier row has.</summary>
    public void Once<TKey>(Dictionary<TKey, int> lines, TKey key, Column column, string rule)
        where TKey : notnull
    {
        if (!lines.TryAdd(key, Line))
        {
            Report(column, $"is the same as line {lines[key]}; {rule}");
        }
    }

    private void Check(Column column, string? problem)
    {
        if (problem is not null)
        {
            Report(column, problem);
        }
    }
}
