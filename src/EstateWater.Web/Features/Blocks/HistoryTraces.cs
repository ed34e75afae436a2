using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
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

    public static List<ITrace> Of(BlockHistory history, DateOnly from, UnitChoice units) =>
    [
        .. Sets(history, from, units),
        .. Outlook(history.Plan, units),
        .. Water([.. history.Days.Where(day => day.Date >= from)], units),
        .. Weather([.. history.Days.Where(day => day.Date >= from)], units),
    ];

    private static IEnumerable<ITrace> Sets(BlockHistory history, DateOnly from, UnitChoice units) => history.Sets
        .Where(set => set.Set.Date >= from)
        .GroupBy(set => (set.Set.Measure, set.IsDoubtful))
        .OrderBy(group => group.Key)
        .Select(group => Dots(group.Key.Measure, group.Key.IsDoubtful, [.. group], units));

    private static Scatter Dots(WaterPotentialMeasure measure, bool doubtful, IReadOnlyList<CheckedSet> sets, UnitChoice units) => new()
    {
        Name = $"{EstateText.Capital(EstateText.MeasureWord(measure))} sets{(doubtful ? ", check failed" : "")}",
        X = Dates(sets.Select(set => set.Set.Date)),
        Y = [.. sets.Select(set => (object)Tension(set.Set.MeanBar, units))],
        Mode = ModeFlag.Markers,
        Marker = new Marker { Color = Ink, Size = 9, Symbol = Symbol(measure, doubtful) },
        ErrorY = new ErrorY
        {
            Array = [.. sets.Select(set => (object)Tension(set.Set.StandardErrorBar ?? 0, units))],
            Color = Ink,
            Thickness = 1.2m,
            Width = 3,
            Visible = true,
        },
        HoverTemplate = TensionHover(units),
    };

    private static Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum Symbol(WaterPotentialMeasure measure, bool doubtful) => (measure, doubtful) switch
    {
        (WaterPotentialMeasure.Leaf, false) => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.Circle,
        (WaterPotentialMeasure.Stem, false) => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.Diamond,
        (WaterPotentialMeasure.Predawn, false) => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.Square,
        _ => Plotly.Blazor.Traces.ScatterLib.MarkerLib.SymbolEnum.XThinOpen,
    };

    private static IEnumerable<ITrace> Outlook(BlockPlan plan, UnitChoice units)
    {
        foreach (var trace in Fan(plan, units, "Outlook without water", Unwatered, "rgba(140,47,57,0.15)", day => day.UnwateredBar))
        {
            yield return trace;
        }

        if (plan.Hours > 0)
        {
            foreach (var trace in Fan(plan, units, "Outlook with the plan", Planned, "rgba(23,87,74,0.18)", day => day.PlannedBar))
            {
                yield return trace;
            }
        }
    }

    private static IEnumerable<ITrace> Fan(BlockPlan plan, UnitChoice units, string name, string colour, string fill, Func<OutlookDay, TensionBand> band)
    {
        yield return Edge(plan, units, band, each => each.P10);
        var top = Edge(plan, units, band, each => each.P90);
        top.Fill = FillEnum.ToNextY;
        top.FillColor = fill;
        yield return top;
        yield return new Scatter
        {
            Name = name,
            X = Dates(plan.Outlook.Select(day => day.Date)),
            Y = [.. plan.Outlook.Select(day => (object)Tension(band(day).P50, units))],
            Mode = ModeFlag.Lines,
            Line = new Plotly.Blazor.Traces.ScatterLib.Line { Color = colour, Width = 2, Dash = colour == Planned ? "dash" : "solid" },
            HoverTemplate = TensionHover(units),
        };
    }

    private static Scatter Edge(BlockPlan plan, UnitChoice units, Func<OutlookDay, TensionBand> band, Func<TensionBand, double> edge) => new()
    {
        X = Dates(plan.Outlook.Select(day => day.Date)),
        Y = [.. plan.Outlook.Select(day => (object)Tension(edge(band(day)), units))],
        Mode = ModeFlag.Lines,
        Line = new Plotly.Blazor.Traces.ScatterLib.Line { Width = 0 },
        HoverInfo = HoverInfoFlag.Skip,
        ShowLegend = false,
    };

    private static IEnumerable<ITrace> Water(IReadOnlyList<HistoryDay> days, UnitChoice units)
    {
        yield return Bars("Rain", Rain, 1, days, units, day => day.IsForecast ? null : day.RainMm);
        yield return Bars("Rain expected", Rain, 0.45m, days, units, day => day.IsForecast ? day.RainMm : null);
        yield return Bars("Applied", Planned, 1, days, units, day => day.AppliedMm);
    }

    private static Bar Bars(string name, string colour, decimal opacity, IReadOnlyList<HistoryDay> days, UnitChoice units, Func<HistoryDay, double?> mm)
    {
        var wet = days.Where(day => mm(day) is > 0).ToList();
        return new Bar
        {
            Name = name,
            X = Dates(wet.Select(day => day.Date)),
            Y = [.. wet.Select(day => (object)Math.Round(units.Depth.Show(mm(day)!.Value), 1 + units.Depth.MoreDecimals))],
            Width = 1000 * 60 * 60 * 20,
            Opacity = opacity,
            Marker = new Plotly.Blazor.Traces.BarLib.Marker { Color = colour },
            YAxis = "y2",
            HoverTemplate = name + " %{x|%a %d %b}: %{y} " + units.Depth.Symbol + "<extra></extra>",
        };
    }

    private static IEnumerable<ITrace> Weather(IReadOnlyList<HistoryDay> days, UnitChoice units)
    {
        yield return AirLine("Highest temperature", "y3", units.Temperature.Symbol, days, day => day.TMaxC is { } c ? units.Temperature.Show(c) : null);
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

    private static double Tension(double bar, UnitChoice units) => Math.Round(units.Pressure.Show(bar), 2 + units.Pressure.MoreDecimals);

    private static string TensionHover(UnitChoice units) => $"%{{x|%a %d %b}}: %{{y:.{1 + units.Pressure.MoreDecimals}f}} {units.Pressure.Symbol}<extra></extra>";

    private static List<object> Dates(IEnumerable<DateOnly> days) => [.. days.Select(day => (object)day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))];
}
