namespace EstateWater.Web.Features.Report;

/// <summary>A size of paper, as it stands in the address.</summary>
/// <param name="Key">Value in the address.</param>
/// <param name="Words">As people say it.</param>
/// <param name="Stylesheet">The style sheet that asks the printer for it.</param>
public sealed record ReportPaper(string Key, string Words, string Stylesheet)
{
    /// <summary>The first is what an address without a paper prints.</summary>
    public static IReadOnlyList<ReportPaper> All { get; } = [new("a4", "A4", "report/a4.css"), new("letter", "Letter", "report/letter.css")];

    /// <summary>The paper of an address; a mangled one is A4.</summary>
    public static ReportPaper Parse(string? key) => All.FirstOrDefault(paper => paper.Key == key) ?? All[0];
}
