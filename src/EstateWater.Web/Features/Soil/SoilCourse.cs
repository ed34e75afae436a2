using EstateWater.Agronomy.WaterStatus;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Drawing;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Soil;

/// <summary>Draws a block's season on one axis of time, one panel above the other: tension, water put on and rain, and the water in the soil at each tube.</summary>
public sealed class SoilCourse
{
    /// <summary>Width of the drawing, in its own units.</summary>
    public const int Width = 760;

    private const double Left = 46, Right = 700, Gap = 30, TensionHeight = 150, WaterHeight = 70, TubeHeight = 120, LegendHeight = 24;
    private const int LongestByWeek = 60;

    private readonly BlockHistory history;
    private readonly UnitChoice units;
    private readonly LinearScale time;

    /// <summary>Of a block.</summary>
    /// <param name="history">The block's season.</param>
    /// <param name="tubes">Its tubes; those not read this season have no panel.</param>
    /// <param name="units">The reader's units.</param>
    public SoilCourse(BlockHistory history, IReadOnlyList<TubeSeries> tubes, UnitChoice units)
    {
        this.history = history;
        this.units = units;
        time = new LinearScale(history.SeasonStart.DayNumber, Math.Max(history.Today.DayNumber, history.SeasonStart.DayNumber + 1) + 0.5, 1, Left, Right);
        var top = Gap;
        Tension = PanelOf($"Tension, {units.Pressure.Symbol}", ref top, TensionHeight, TensionsBar().Select(units.Pressure.Show));
        Water = PanelOf($"Water put on and rain by day, {units.Depth.Symbol}", ref top, WaterHeight, Days.Select(day => (day.AppliedMm ?? 0) + (day.RainMm ?? 0)).Append(0).Append(1).Select(units.Depth.Show));
        Tubes = [.. tubes.Where(tube => tube.Profiles.Any(IsShown)).Select(tube => TubeOf(tube, ref top))];
        Bottom = top - Gap;
        Height = Bottom + LegendHeight;
    }

    /// <summary>Height of the drawing.</summary>
    public double Height { get; }

    /// <summary>Where the lowest panel ends.</summary>
    public double Bottom { get; }

    /// <summary>Tension, in the reader's unit.</summary>
    public SoilPanel Tension { get; }

    /// <summary>Water put on and rain, in the reader's unit.</summary>
    public SoilPanel Water { get; }

    /// <summary>A panel each tube.</summary>
    public IReadOnlyList<TubePanel> Tubes { get; }

    /// <summary>Every panel, from the top down.</summary>
    public IEnumerable<SoilPanel> Panels => [Tension, Water, .. Tubes.Select(tube => tube.Panel)];

    /// <summary>Dates along the axis.</summary>
    public IEnumerable<(string X, string Words)> Dates
    {
        get
        {
            var byWeek = history.Today.DayNumber - history.SeasonStart.DayNumber <= LongestByWeek;
            for (var day = history.SeasonStart; day <= history.Today; day = day.AddDays(1))
            {
                if (byWeek ? day.DayOfWeek == DayOfWeek.Monday : day.Day == 1)
                {
                    yield return (X(day), units.Date(day, "d MMM"));
                }
            }
        }
    }

    /// <summary>The tension wanted.</summary>
    public IEnumerable<DrawnBox> Wanted => history.Bands
        .Where(band => band.From <= history.Today)
        .Select(band => Box(time.At(band.From.DayNumber), time.At(Math.Min(band.To.DayNumber + 1, history.Today.DayNumber + 0.5)), TensionAt(band.CeilingBar), TensionAt(band.FloorBar)));

    /// <summary>Reading sets.</summary>
    public IEnumerable<DrawnSet> Sets => history.Sets.Select(set => new DrawnSet(
        X(set.Set.Date),
        LinearScale.Text(TensionAt(set.Set.MeanBar)),
        set.Set.StandardErrorBar is { } error ? (LinearScale.Text(TensionAt(set.Set.MeanBar + error)), LinearScale.Text(TensionAt(set.Set.MeanBar - error))) : null,
        MarkOf(set.Set.Measure),
        set.IsDoubtful));

    /// <summary>Water put on, a bar a day.</summary>
    public IEnumerable<DrawnBox> Applied => Days.Where(day => day.AppliedMm > 0).Select(day => Bar(day.Date, 0, day.AppliedMm!.Value));

    /// <summary>Rain, on top of what was put on.</summary>
    public IEnumerable<DrawnBox> Rain => Days.Where(day => day.RainMm > 0).Select(day => Bar(day.Date, day.AppliedMm ?? 0, day.RainMm!.Value));

    /// <summary>The mark of a measure: circle for leaf, diamond for stem, square for predawn.</summary>
    public static string MarkOf(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Stem => MarkShape.All[3],
        WaterPotentialMeasure.Predawn => MarkShape.All[1],
        _ => MarkShape.All[0],
    };

    private IEnumerable<HistoryDay> Days => history.Days.Where(day => day.Date <= history.Today && !day.IsForecast);

    private IEnumerable<double> TensionsBar() =>
    [
        .. history.Sets.SelectMany(set => new[] { set.Set.MeanBar - (set.Set.StandardErrorBar ?? 0), set.Set.MeanBar + (set.Set.StandardErrorBar ?? 0) }),
        .. history.Bands.Where(band => band.From <= history.Today).SelectMany(band => new[] { band.FloorBar, band.CeilingBar }),
    ];

    private TubePanel TubeOf(TubeSeries tube, ref double top)
    {
        var days = tube.Profiles.Where(IsShown).Select(profile => (profile.Date, Mm: tube.Mm(profile))).Where(day => day.Mm is not null).ToList();
        var points = tube.Points;
        var values = days.Select(day => day.Mm!.Value);
        var panel = PanelOf(
            $"Water in the soil at tube {tube.Tube}, {units.Depth.Symbol}, down to {units.Span(tube.SpanM)}",
            ref top,
            TubeHeight,
            (points is null ? values : values.Append(points.FullMm).Append(points.RefillMm)).Select(units.Depth.Show));
        string Place(double mm) => panel.Y.Place(units.Depth.Show(mm));
        return new TubePanel(
            tube,
            panel,
            [.. days.Select(day => (X(day.Date), Place(day.Mm!.Value)))],
            points is null ? null : Place(points.FullMm),
            points is null ? null : Place(points.RefillMm));
    }

    private static SoilPanel PanelOf(string title, ref double top, double height, IEnumerable<double> values)
    {
        var panel = new SoilPanel(title, top, LinearScale.Holding(values, top + height, top, 4));
        top += height + Gap;
        return panel;
    }

    private DrawnBox Bar(DateOnly day, double from, double mm)
    {
        var half = Math.Max(1.5, (time.At(1) - time.At(0)) * 0.4);
        return Box(time.At(day.DayNumber) - half, time.At(day.DayNumber) + half, Water.Y.At(units.Depth.Show(from + mm)), Water.Y.At(units.Depth.Show(from)));
    }

    private double TensionAt(double bar) => Tension.Y.At(units.Pressure.Show(bar));

    private bool IsShown(TubeProfile profile) => profile.Date >= history.SeasonStart;

    private string X(DateOnly day) => time.Place(day.DayNumber);

    private static DrawnBox Box(double left, double right, double top, double bottom) =>
        new(LinearScale.Text(left), LinearScale.Text(top), LinearScale.Text(right - left), LinearScale.Text(bottom - top));
}

/// <summary>One panel over the axis of time.</summary>
/// <param name="Title">What it shows, with its unit.</param>
/// <param name="Top">Where it begins.</param>
/// <param name="Y">Its values, rising.</param>
public sealed record SoilPanel(string Title, double Top, LinearScale Y);

/// <summary>A tube's panel.</summary>
/// <param name="Series">The tube.</param>
/// <param name="Panel">Its place.</param>
/// <param name="Points">Water in the soil by day.</param>
/// <param name="FullY">Height of the full point; null while it is not known.</param>
/// <param name="RefillY">Height of the refill point; null while it is not known.</param>
public sealed record TubePanel(TubeSeries Series, SoilPanel Panel, IReadOnlyList<(string X, string Y)> Points, string? FullY, string? RefillY);

/// <summary>A rectangle.</summary>
public sealed record DrawnBox(string X, string Y, string Width, string Height);

/// <summary>A reading set.</summary>
/// <param name="X">Its day.</param>
/// <param name="Y">Its mean.</param>
/// <param name="Whisker">Mean plus and minus the standard error; null for a single vine.</param>
/// <param name="Mark">Shape of its measure.</param>
/// <param name="IsDoubtful">Whether a check failed.</param>
public sealed record DrawnSet(string X, string Y, (string Top, string Bottom)? Whisker, string Mark, bool IsDoubtful);
