using System.Text.Json;

namespace EstateWater.Data.Folder;

/// <summary>The members of a JSON object as columns. What cannot be used is reported and comes back as null.</summary>
internal sealed class JsonMembers
{
    private readonly FolderScan scan;
    private readonly string file;
    private readonly Func<string, int> lineOf;
    private readonly Dictionary<string, JsonElement> values = new(StringComparer.Ordinal);

    public JsonMembers(FolderScan scan, string file, Func<string, int> lineOf, JsonElement members, Column[] columns)
    {
        this.scan = scan;
        this.file = file;
        this.lineOf = lineOf;
        foreach (var member in members.EnumerateObject())
        {
            if (!Array.Exists(columns, c => c.Name == member.Name))
            {
                Report(member.Name, CsvHeader.UnknownColumn(member.Name, columns));
            }
            else if (!values.TryAdd(member.Name, member.Value))
            {
                Report(member.Name, "appears twice; keep one");
            }
        }
    }

    public void Report(Column column, string message) => Report(column.Name, message);

    public string? Text(Column column)
    {
        if (Value(column) is not { } value)
        {
            return null;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            Report(column, $"{value.GetRawText()} is not a text; write it in quotation marks");
            return null;
        }

        var text = value.GetString()!.Trim();
        Check(column, text.Length == 0 && column.IsRequired ? "is empty and is required" : column.ProblemWith(text));
        Check(column, text.Any(char.IsControl) ? "has a control character or line break; remove it" : null);
        return text.Length == 0 ? null : text;
    }

    public string? Code(Column column, CodeSet codes)
    {
        var code = Text(column);
        Check(column, code is null ? null : codes.ProblemWith(code));
        return code;
    }

    /// <summary>A code that this file defines, once.</summary>
    public string NewCode(Column column, CodeSet codes)
    {
        var code = Text(column);
        Check(column, codes.Add(code));
        return code ?? "";
    }

    public T? Choice<T>(Column column)
        where T : struct, Enum
    {
        if (Text(column) is not { } text)
        {
            return null;
        }

        var choice = Words<T>.Find(text);
        Check(column, choice is null ? $"'{text}' is not one of {Words<T>.List}" : null);
        return choice;
    }

    public double? Number(Column column)
    {
        if (Value(column) is not { } value)
        {
            return null;
        }

        if (value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out var number) || !double.IsFinite(number))
        {
            Report(column, $"{value.GetRawText()} is not a number; write it like 1.5, without quotation marks");
            return null;
        }

        Check(column, column.ProblemWith(number));
        return number;
    }

    public int? WholeNumber(Column column)
    {
        if (Number(column) is not { } number)
        {
            return null;
        }

        Check(column, number % 1 == 0 ? null : "must be a whole number");
        return (int)number;
    }

    private JsonElement? Value(Column column)
    {
        if (values.TryGetValue(column.Name, out var value) && value.ValueKind != JsonValueKind.Null)
        {
            return value;
        }

        Check(column, column.IsRequired ? "is required and not there; add it" : null);
        return null;
    }

    private void Check(Column column, string? problem)
    {
        if (problem is not null)
        {
            Report(column, problem);
        }
    }

    private void Report(string member, string message) => scan.Report(file, lineOf(member), member, message);
}
