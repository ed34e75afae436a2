namespace EstateWater.Data.Folder;

/// <summary>Finds a file's columns by the names in its header.</summary>
internal static class CsvHeader
{
    /// <summary>Where each column stands. Reports unknown, repeated and missing ones.</summary>
    public static Dictionary<Column, int> Match(FolderScan scan, string file, string[] names, Column[] columns)
    {
        var positions = new Dictionary<Column, int>();
        if (SeparatorProblem(names) is { } problem)
        {
            scan.Report(file, 1, Defect.WholeHeader, problem);
            return positions;
        }

        for (var i = 0; i < names.Length; i++)
        {
            if (Array.Find(columns, c => c.Name == names[i]) is not { } column)
            {
                var isNamed = names[i].Length > 0;
                scan.Report(
                    file, 1, isNamed ? names[i] : Defect.WholeHeader, isNamed ? UnknownColumn(names[i], columns) : $"column {i + 1} has no name; name it or remove it");
            }
            else if (!positions.TryAdd(column, i))
            {
                scan.Report(file, 1, names[i], "appears twice in the header; keep one");
            }
        }

        foreach (var column in columns.Where(c => c.IsRequired && !positions.ContainsKey(c)))
        {
            scan.Report(file, 1, column.Name, "is required and not in the header; add it");
        }

        return positions;
    }

    /// <summary>What to say of a column we do not know: the one probably meant, or all there are.</summary>
    public static string UnknownColumn(string name, Column[] columns)
    {
        var near = columns
            .Select(c => (Column: c, Shared: SharedPrefix(c.Name, name)))
            .Where(c => c.Shared >= 3 || name.AsSpan(0, c.Shared).Contains('_'))
            .OrderByDescending(c => c.Shared)
            .FirstOrDefault().Column;
        return near is null
            ? $"unknown column '{name}'; the columns are {string.Join(", ", columns.Select(c => c.Name))}"
            : $"unknown column '{name}'; use {near.Name}";
    }

    private static int SharedPrefix(string a, string b) =>
        a.AsSpan().CommonPrefixLength(b);

    private static string? SeparatorProblem(string[] names) => names switch
    {
        [] or [""] => "is empty; the first line must name the columns",
        [var only] when only.Contains(';') => "the columns are separated by semicolons; use commas, and a point in numbers",
        [var only] when only.Contains('\t') => "the columns are separated by tabs; use commas",
        _ => null,
    };
}
