namespace EstateWater.Web.Features.Compare;

/// <summary>Which blocks are compared, as it stands in the address: codes with commas, or the name given several times.</summary>
/// <param name="Known">Codes of the estate, each once, in the order asked for.</param>
/// <param name="Unknown">Codes that the estate has not.</param>
/// <param name="Left">How many more were asked for than fit side by side.</param>
public sealed record BlockChoice(IReadOnlyList<string> Known, IReadOnlyList<string> Unknown, int Left)
{
    /// <summary>More do not fit side by side.</summary>
    public const int Most = 6;

    /// <summary>Reads an address.</summary>
    public static BlockChoice Parse(IEnumerable<string?>? values, IReadOnlySet<string> codes)
    {
        ArgumentNullException.ThrowIfNull(codes);
        var asked = (values ?? [])
            .SelectMany(value => (value ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            .Distinct(StringComparer.Ordinal)
            .ToList();
        var known = asked.Where(codes.Contains).ToList();
        return new BlockChoice([.. known.Take(Most)], [.. asked.Where(code => !codes.Contains(code))], Math.Max(0, known.Count - Most));
    }

    /// <summary>Address of these blocks side by side.</summary>
    public static string Href(IEnumerable<string> codes) => "/compare?blocks=" + string.Join(',', codes.Select(Uri.EscapeDataString));
}
