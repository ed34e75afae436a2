using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.Parts;
using Plotly.Blazor;
using Plotly.Blazor.Traces;
using Plotly.Blazor.Traces.ScatterLib;

namespace EstateWater.Web.Features.Blocks;

/// <summary>Draws a block's history as traces: tension, water, temperature and dryness of the air, one panel each.</summary>
internal static class HistoryTraces
{
    private const string Ink = "#1d241f";
    private const string Unwatered = "#8c2f39";
    private const string Planned = "#17574a";
    private const string Rain = "#4a7fb5";
    private const string Air = "#6b5d1f";

    public static List<ITrace> Of(BlockHistory history, DateOnly from) =>
    [
        .. Sets(history, from),
        .. Outlook(history.Plan),
        .. Water([.. history.Days.Where(day => day.Date >= from)]),
        .. Weather([.. history.Days.Where(day => day.Date >= from)]),
    ];

    private static IEnumerable<ITrace> Sets(BlockHistory history, DateOnly from) => history.Sets
        .Where(set => set.Set.Date >= from)
        .GroupBy(set => (set.Set.Measure, set.IsDoubtful))
        .OrderBy(group => group.Key)
        .Select(group => Dots(group.Key.Measure, group.Key.IsDoubtful, [.. group]));

    private static Scatter Dots(WaterPotentialMeasure measure, bool doubtful, IReadOnlyList<CheckedSet> sets) => new()
    {
        Name = $"{EstateText.Capital(EstateText.MeasureWord(measure))} sets{(doubtful ? ", check failed" : "")}",
        X = Dates(sets.Select(set => set.Set.Date)),
        Y = [.. sets.Select(set => (object)Math.Round(set.Set.MeanBar, 2))],
        Mode = ModeFlag.Markers,
        Marker = new Marker { Color = Ink, Size = 9, Symbol = Symbol(measure, doubtful) },
        ErrorY = new ErrorY
        {
            Array = [.. sets.Select(set => (object)Math.Round(set.Set.StandardErrorBar ?? 0, 2))],
            Color = Ink,
            Thickness = 1.2m,
            Width = 3,
            Visible = true,
        },
        HoverTemplate = "%{x|%a %d %b}: %{y:.1f} bar<extra></extra>",
    };

    private static Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum Symbol(WaterPotentialMeasure measure, bool doubtful) => (measure, doubtful) switch
    {
        (WaterPotentialMeasure.Leaf, false) => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.Circle,
        (WaterPotentialMeasure.Stem, false) => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.Diamond,
        (WaterPotentialMeasure.Predawn, false) => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.Square,
        _ => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.XThinOpen,
    };

    private static IEnumerable<ITrace> Outlook(BlockPlan plan)
    {
        foreach (var trace in Fan(plan, "Outlook without water", Unwatered, "rgba(140,47,57,0.15)", day => day.UnwateredBar))
        {
            yield return trace;
        }

        if (plan.Hours > 0)
        {
            foreach (var trace in Fan(plan, "Outlook with the plan", Planned, "rgba(23,87,74,0.18)", day => day.PlannedBar))
            {
                yield return trace;
            }
        }
    }

    private static IEnumerable<ITrace> Fan(BlockPlan plan, string name, string colour, string fill, Func<OutlookDay, TensionBand> band)
    {
        yield return Edge(plan, band, each => each.P10);
        var top = Edge(plan, band, each => each.P90);
        top.Fill = FillEnum.ToNextY;
        top.FillColor = fill;
        yield return top;
        yield return new Scatter
        {
            Name = name,
            X = Dates(plan.Outlook.Select(day => day.Date)),
            Y = [.. plan.Outlook.Select(day => (object)Math.Round(band(day).P50, 2))],
            Mode = ModeFlag.Lines,
            Line = new Plotly.Blazor.Traces.ScatterLib.Line { Color = colour, Width = 2, Dash = colour == Planned ? "dash" : "solid" },
            HoverTemplate = "%{x|%a %d %b}: %{y:.1f} bar<extra></extra>",
        };
    }

    private static Scatter Edge(BlockPlan plan, Func<OutlookDay, TensionBand> band, Func<TensionBand, double> edge) => new()
    {
        X = Dates(plan.Outlook.Select(day => day.Date)),
        Y = [.. plan.Outlook.Select(day => (object)Math.Round(edge(band(day)), 2))],
        Mode = ModeFlag.Lines,
        Line = new Plotly.Blazor.Traces.ScatterLib.Line { Width = 0 },
        HoverInfo = HoverInfoFlag.Skip,
        ShowLegend = false,
    };

    private static IEnumerable<ITrace> Water(IReadOnlyList<HistoryDay> days)
    {
        yield return Bars("Rain", Rain, 1, days, day => day.IsForecast ? null : day.RainMm);
        yield return Bars("Rain expected", Rain, 0.45m, days, day => day.IsForecast ? day.RainMm : null);
        yield return Bars("Applied", Planned, 1, days, day => day.AppliedMm);
    }

    private static Bar Bars(string name, string colour, decimal opacity, IReadOnlyList<HistoryDay> days, Func<HistoryDay, double?> mm)
    {
        var wet = days.Where(day => mm(day) is > 0).ToList();
        return new Bar
        {
            Name = name,
            X = Dates(wet.Select(day => day.Date)),
            Y = [.. wet.Select(day => (object)Math.Round(mm(day)!.Value, 1))],
            Width = 1000 * 60 * 60 * 20,
            Opacity = opacity,
            Marker = new Plotly.Blazor.Traces.BarLib.Marker { Color = colour },
            YAxis = "y2",
            HoverTemplate = name + " %{x|%a %d %b}: %{y} mm<extra></extra>",
        };
    }

    private static IEnumerable<ITrace> Weather(IReadOnlyList<HistoryDay> days)
    {
        yield return AirLine("Highest temperature", "y3", "°C", days, day => day.TMaxC);
        yield return AirLine("Midday vapour pressure deficit", "y4", "kPa", days, day => day.MiddayVpdKpa);
    }

    private static Scatter AirLine(string name, string axis, string unit, IReadOnlyList<HistoryDay> days, Func<HistoryDay, double?> value)
    {
        var known = days.Where(day => value(day) is not null).ToList();
        return new Scatter
        {
            Name = name,
            X = Dates(known.Select(day => day.Date)),
            Y = [.. known.Select(day => (object)Math.Round(value(day)!.Value, 1))],
            Mode = ModeFlag.Lines,
            Line = new Plotly.Blazor.Traces.ScatterLib.Line { Color = Air, Width = 1.5m },
            YAxis = axis,
            ShowLegend = false,
            HoverTemplate = "%{x|%a %d %b}: %{y} " + unit + "<extra></extra>",
        };
    }

    private static List<object> Dates(IEnumerable<DateOnly> days) => [.. days.Select(day => (object)day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))];
}
