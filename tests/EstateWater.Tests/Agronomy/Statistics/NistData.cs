using System.Globalization;
using System.Text.RegularExpressions;

namespace EstateWater.Tests.Statistics;

/// <summary>Rows of a NIST StRD data set, read from the file as published.</summary>
internal static partial class NistData
{
    public static double[][] Rows(string name)
    {
        var assembly = typeof(NistData).Assembly;
        var resource = assembly.GetManifestResourceNames().Single(n => n.EndsWith($".{name}.dat", StringComparison.Ordinal));
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        var lines = reader.ReadToEnd().Split('\n');

        // The head names the lines of the data, or a rule of dashes stands before them.
        var span = DataLines().Match(string.Join('\n', lines.Take(20)));
        var data = span.Success
            ? lines[(int.Parse(span.Groups[1].Value, CultureInfo.InvariantCulture) - 1)..int.Parse(span.Groups[2].Value, CultureInfo.InvariantCulture)]
            : lines[(Array.FindIndex(lines, l => l.StartsWith("---", StringComparison.Ordinal)) + 1)..];
        return
        [
            .. data
                .Where(l => l.Trim().Length > 0)
                .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()),
        ];
    }

    public static double[] Column(string name, int column = 0) => [.. Rows(name).Select(r => r[column])];

    [GeneratedRegex(@"Data\s*\(lines\s+(\d+)\s+to\s+(\d+)\)")]
    private static partial Regex DataLines();
}
