using System.Globalization;
using EstateWater.Planning;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using Plotly.Blazor;
using Plotly.Blazor.LayoutLib;
using Plotly.Blazor.LayoutLib.ShapeLib;

namespace EstateWater.Web.Features.Blocks;

/// <summary>Lays the panels of a block's history over one axis of time, with the wanted band, the heat and today.</summary>
internal static class HistoryLayout
{
    private const string Ink = "#1d241f";
    private const string Grid = "#e4e3da";

    /// <summary>Height of the chart. [px]</summary>
    public const int Height = 660;

    public static Plotly.Blazor.Layout Of(BlockHistory history, DateOnly from, UnitChoice units, IEnumerable<PlannedHeatSpell> heat)
    {
        var last = history.Plan.Outlook.Select(day => day.Date).Append(history.Today).Max();
        return new Plotly.Blazor.Layout
        {
            Height = Height,
            AutoSize = true,
            Separators = units.Numbers.Numbers.NumberDecimalSeparator + units.Numbers.Numbers.NumberGroupSeparator,
            DragMode = DragModeEnum.False,
            HoverMode = HoverModeEnum.Closest,
            BarMode = BarModeEnum.Stack,
            PaperBgColor = "#ffffff",
            PlotBgColor = "#ffffff",
            Font = new Font { Color = Ink, Size = 13, Family = "system-ui, sans-serif" },
            Margin = new Margin { L = 56, R = 12, T = 8, B = 32 },
            Legend = [new Legend { Orientation = Plotly.Blazor.LayoutLib.LegendLib.OrientationEnum.H, X = 0, Y = 1.01m, YAnchor = Plotly.Blazor.LayoutLib.LegendLib.YAnchorEnum.Bottom }],
            XAxis = [new XAxis { Type = Plotly.Blazor.LayoutLib.XAxisLib.TypeEnum.Date, Range = [Text(from.AddDays(-1)), Text(last.AddDays(1))], Anchor = "y4", GridColor = Grid, TickFormat = units.Numbers.MonthFirst ? "%b %d" : "%d %b", FixedRange = true }],
            YAxis =
            [
                Panel($"{EstateText.Capital(EstateText.MeasureWord(history.Plan.Measure))} tension, {units.Pressure.Symbol}", 0.50m, 1.00m),
                Panel($"Water, {units.Depth.Symbol}", 0.32m, 0.45m),
                Panel($"Highest, {units.Temperature.Symbol}", 0.16m, 0.28m),
                Panel("VPD, kPa", 0.00m, 0.12m),
            ],
            Shapes = [.. history.Bands.Where(band => band.To >= from).Select(band => Band(band, units)), .. heat.Select(Heat), TodayLine(history.Today)],
        };
    }

    private static YAxis Panel(string title, decimal bottom, decimal top) => new()
    {
        Title = new Plotly.Blazor.LayoutLib.YAxisLib.Title { Text = title, Font = new Plotly.Blazor.LayoutLib.YAxisLib.TitleLib.Font { Size = 12 } },
        Domain = [bottom, top],
        GridColor = Grid,
        NTicks = bottom < 0.4m ? 4 : 8,
        FixedRange = true,
        ZeroLine = false,
    };

    private static Shape Band(TargetBand band, UnitChoice units) => new()
    {
        Type = TypeEnum.Rect,
        XRef = "x",
        YRef = "y",
        X0 = Text(band.From),
        X1 = Text(band.To.AddDays(1)),
        Y0 = units.Pressure.Show(band.FloorBar),
        Y1 = units.Pressure.Show(band.CeilingBar),
        FillColor = "rgba(74,127,181,0.16)",
        Line = new Line { Width = 0 },
        Layer = LayerEnum.Below,
    };

    private static Shape Heat(PlannedHeatSpell spell) => new()
    {
        Type = TypeEnum.Rect,
        XRef = "x",
        YRef = "paper",
        X0 = Text(spell.From),
        X1 = Text(spell.To.AddDays(1)),
        Y0 = 0,
        Y1 = 1,
        FillColor = "rgba(214,132,24,0.16)",
        Line = new Line { Width = 0 },
        Layer = LayerEnum.Below,
    };

    private static Shape TodayLine(DateOnly today) => new()
    {
        Type = TypeEnum.Line,
        XRef = "x",
        YRef = "paper",
        X0 = Text(today),
        X1 = Text(today),
        Y0 = 0,
        Y1 = 1,
        Line = new Line { Color = Ink, Width = 1, Dash = "dot" },
    };

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
