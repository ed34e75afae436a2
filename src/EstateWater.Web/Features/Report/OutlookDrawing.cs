using EstateWater.Planning;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Parts.Drawing;

namespace EstateWater.Web.Features.Report;

/// <summary>Draws a block's outlook for paper: the days ahead to the right, tension upward, the bands told apart by tint and dash.</summary>
public sealed class OutlookDrawing
{
    /// <summary>Size of the drawing, in its own units.</summary>
    public const int Width = 360, Height = 144;

    private const double Left = 30, Right = 350, Top = 16, Bottom = 124;
    private const int MostSteps = 8;

    // “Wed 22” is 40 wide, and the days take 320.
    private const int MostNames = 7;

    private readonly BlockReport report;
    private readonly IReadOnlyList<OutlookDay> days;

    /// <summary>Of a block.</summary>
    public OutlookDrawing(BlockReport report)
    {
        this.report = report;
        days = report.Row.Plan.Outlook;
    }

    /// <summary>One axis for all blocks of a measure, so that their drawings compare.</summary>
    public static LinearScale ScaleOf(IEnumerable<BlockRow> rows) => LinearScale.Holding(
        rows.SelectMany(row => row.Plan.Outlook
            .SelectMany(day => new[] { day.UnwateredBar.P10, day.UnwateredBar.P90, day.PlannedBar.P10, day.PlannedBar.P90 })
            .Concat([row.Plan.FloorBar, row.Plan.CeilingBar])),
        Bottom,
        Top,
        MostSteps);

    /// <summary>Tension. [bar]</summary>
    public LinearScale TensionBar => report.TensionBar;

    /// <summary>Where the tension wanted now lies.</summary>
    public (string Top, string Height) Wanted =>
        (TensionBar.Place(report.Row.Plan.CeilingBar), LinearScale.Text(TensionBar.At(report.Row.Plan.FloorBar) - TensionBar.At(report.Row.Plan.CeilingBar)));

    /// <summary>The band from p10 to p90 as the attribute <c>points</c>.</summary>
    public string Band(Func<OutlookDay, TensionBand> of) => string.Join(' ', days.Select((day, i) => Point(i, of(day).P90)).Concat(days.Select((day, i) => Point(i, of(day).P10)).Reverse()));

    /// <summary>A line through one value a day.</summary>
    public string Line(Func<OutlookDay, double> of) => string.Join(' ', days.Select((day, i) => Point(i, of(day))));

    /// <summary>Days with their place, whether they lie in heat, and whether there is room to name them: every second, third or further one from today on.</summary>
    public IEnumerable<(DateOnly Day, string X, bool IsHot, bool IsNamed)> Days => days.Select((day, i) => (
        day.Date,
        LinearScale.Text(X(i)),
        report.Heat.Any(spell => spell.From <= day.Date && day.Date <= spell.To),
        i % NamedEvery == 0));

    private int NamedEvery => Math.Max(2, (days.Count + MostNames - 1) / MostNames);

    private string Point(int i, double bar) => $"{LinearScale.Text(X(i))},{TensionBar.Place(bar)}";

    private double X(int i) => days.Count < 2 ? (Left + Right) / 2 : Left + 8 + (i * (Right - Left - 16) / (days.Count - 1));
}
