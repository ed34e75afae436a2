using EstateWater.Web.Features.Estate;

namespace EstateWater.Web.Features.Report;

/// <summary>Which blocks a report tells of.</summary>
public enum ReportScope
{
    /// <summary>Every block.</summary>
    All,

    /// <summary>Blocks that need water.</summary>
    Watered,

    /// <summary>Blocks that were ticked.</summary>
    Ticked,
}

/// <summary>What is asked of a report, as it stands in the address.</summary>
/// <param name="Scope">Which blocks.</param>
/// <param name="Ticked">Codes that were ticked and that the estate has.</param>
/// <param name="Unknown">Codes that the estate has not.</param>
/// <param name="Paper">What it is printed on.</param>
public sealed record ReportChoice(ReportScope Scope, IReadOnlySet<string> Ticked, IReadOnlyList<string> Unknown, ReportPaper Paper)
{
    /// <summary>Whether ticked blocks were asked for and none was ticked: then every block is told of.</summary>
    public bool IsNothingTicked => Scope == ReportScope.Ticked && Ticked.Count == 0;

    /// <summary>Reads an address; a mangled one asks for every block on A4. Codes without a scope are ticked ones.</summary>
    /// <param name="scope">“all”, “watered” or “ticked”.</param>
    /// <param name="blocks">Codes, each alone or several with commas.</param>
    /// <param name="paper">Key of the paper.</param>
    /// <param name="codes">Codes of the estate.</param>
    public static ReportChoice Parse(string? scope, IEnumerable<string?>? blocks, string? paper, IReadOnlySet<string> codes)
    {
        ArgumentNullException.ThrowIfNull(codes);
        var asked = (blocks ?? [])
            .SelectMany(value => (value ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            .Distinct(StringComparer.Ordinal)
            .ToLookup(codes.Contains);
        var usual = asked.Count > 0 ? ReportScope.Ticked : ReportScope.All;
        return new ReportChoice(
            Enum.TryParse<ReportScope>(scope, ignoreCase: true, out var named) && Enum.IsDefined(named) ? named : usual,
            asked[true].ToHashSet(),
            [.. asked[false]],
            ReportPaper.Parse(paper));
    }

    /// <summary>The blocks that are told of, in the order given.</summary>
    /// <param name="rows">Every block.</param>
    /// <param name="decisions">Blocks that need water.</param>
    public IReadOnlyList<BlockRow> Of(IReadOnlyList<BlockRow> rows, IReadOnlyList<Decision> decisions) => Scope switch
    {
        ReportScope.Watered => [.. decisions.Select(decision => decision.Row)],
        ReportScope.Ticked when Ticked.Count > 0 => [.. rows.Where(row => Ticked.Contains(row.Block.Code))],
        _ => rows,
    };
}
