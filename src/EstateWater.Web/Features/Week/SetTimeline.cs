using EstateWater.Planning;
using EstateWater.Web.Parts;

namespace EstateWater.Web.Features.Week;

/// <summary>Sets laid out for drawing: a row per source, a column per night, bars in lanes that do not overlap.</summary>
/// <param name="Nights">The days on which the nights begin, none left out between first and last.</param>
/// <param name="Rows">Sources in the order given.</param>
public sealed record SetTimeline(IReadOnlyList<DateOnly> Nights, IReadOnlyList<SourceRow> Rows)
{
    // A letter of a bar's name and the room around it, as shares of the narrowest night that is drawn.
    private const double LetterShare = 0.065, RoomShare = 0.08;

    /// <summary>Lays sets out. A set that runs past a window's end is drawn in both windows; one that is shorter than its name keeps room for it.</summary>
    /// <param name="sets">The sets.</param>
    /// <param name="sources">The sources that feed them.</param>
    /// <param name="zone">The estate's zone.</param>
    /// <param name="ahead">Nights to lay out also where nothing runs.</param>
    /// <param name="nameOf">What stands on the bar of a valve; its code where null.</param>
    public static SetTimeline Of(
        IReadOnlyList<PlannedSet> sets, IReadOnlyList<PlanSource> sources, TimeZoneInfo zone, IReadOnlyList<DateOnly>? ahead = null, Func<string, string>? nameOf = null)
    {
        nameOf ??= valve => valve;
        var pieces = sources.ToDictionary(s => s.Code, source => sets
            .Where(s => s.Source == source.Code)
            .SelectMany(s => Pieces(s, source, zone))
            .ToList());
        var dates = pieces.Values.SelectMany(p => p).Select(p => p.Night).Concat(ahead ?? []).ToList();
        if (dates.Count == 0)
        {
            return new SetTimeline([], []);
        }

        var (first, last) = (dates.Min(), dates.Max());
        var nights = Enumerable.Range(0, last.DayNumber - first.DayNumber + 1).Select(first.AddDays).ToList();
        var rows = sources
            .Select(source => new SourceRow(source, nights.Select(n => Cell(Window(source, n, zone), pieces[source.Code].Where(p => p.Night == n), nameOf)).ToList()))
            .ToList();
        return new SetTimeline(nights, rows);
    }

    private static IEnumerable<Piece> Pieces(PlannedSet set, PlanSource source, TimeZoneInfo zone)
    {
        var start = TimeZoneInfo.ConvertTime(set.Start, zone);
        for (var night = DateOnly.FromDateTime(start.DateTime - source.DailyFrom.ToTimeSpan()); ; night = night.AddDays(1))
        {
            var (opens, closes) = Window(source, night, zone);
            var next = EstateText.At(night.AddDays(1), source.DailyFrom, zone);
            var window = closes - opens;

            // Also what runs after the window closes belongs to its night, pressed against its end.
            if (opens < set.End)
            {
                var from = set.Start < opens ? opens : set.Start;
                var to = set.End > next ? next : set.End;
                yield return new Piece(set, night, Share(from - opens, window), Share(to - opens, window), from);
            }

            if (set.End <= next)
            {
                yield break;
            }
        }
    }

    private static (DateTimeOffset Opens, DateTimeOffset Closes) Window(PlanSource source, DateOnly night, TimeZoneInfo zone) => (
        EstateText.At(night, source.DailyFrom, zone),
        EstateText.At(source.DailyTo <= source.DailyFrom ? night.AddDays(1) : night, source.DailyTo, zone));

    private static double Share(TimeSpan part, TimeSpan window) => Math.Clamp(part / window, 0, 1);

    private static NightCell Cell((DateTimeOffset Opens, DateTimeOffset Closes) window, IEnumerable<Piece> pieces, Func<string, string> nameOf)
    {
        var laneEnds = new List<double>();
        var bars = new List<SetBar>();
        foreach (var piece in pieces.OrderBy(p => p.From).ThenBy(p => p.Set.Valve, StringComparer.Ordinal))
        {
            var name = nameOf(piece.Set.Valve);
            var width = Math.Min(1, (name.Length * LetterShare) + RoomShare);
            var nameLeft = NameLeft(piece, width);
            var lane = laneEnds.FindIndex(end => end <= Math.Min(piece.Left, nameLeft));
            if (lane < 0)
            {
                lane = laneEnds.Count;
                laneEnds.Add(0);
            }

            laneEnds[lane] = Math.Max(piece.Right, nameLeft + width);
            bars.Add(new SetBar(piece.Set, lane, piece.Left, piece.Right, name, nameLeft));
        }

        return new NightCell(bars, laneEnds.Count, Flows(bars), window.Opens, window.Closes);
    }

    // On the bar, else behind it, else before it; where the night has room for neither, across it.
    private static double NameLeft(Piece piece, double width) =>
        piece.Right - piece.Left >= width ? piece.Left
        : piece.Right + width <= 1 ? piece.Right
        : piece.Left - width >= 0 ? piece.Left - width
        : Math.Min(piece.Left, 1 - width);

    private static List<FlowStep> Flows(IReadOnlyList<SetBar> bars) => bars
        .SelectMany(b => new[] { b.Left, b.Right })
        .Distinct()
        .Order()
        .Select(at => new FlowStep(at, bars.Where(b => b.Left <= at && at < b.Right).Sum(b => b.Set.FlowM3PerH)))
        .ToList();

    private sealed record Piece(PlannedSet Set, DateOnly Night, double Left, double Right, DateTimeOffset From);
}

/// <summary>A source's nights.</summary>
/// <param name="Source">The source.</param>
/// <param name="Nights">A cell a night.</param>
public sealed record SourceRow(PlanSource Source, IReadOnlyList<NightCell> Nights)
{
    /// <summary>Greatest flow drawn at once. [m³/h]</summary>
    public double PeakFlowM3PerH => Nights.SelectMany(n => n.Flows).Select(f => f.FlowM3PerH).DefaultIfEmpty(0).Max();
}

/// <summary>One source on one night.</summary>
/// <param name="Bars">Its sets.</param>
/// <param name="Lanes">How many run side by side at most.</param>
/// <param name="Flows">The flow drawn, from each step to the next.</param>
/// <param name="Opens">When the source's window opens.</param>
/// <param name="Closes">When it closes.</param>
public sealed record NightCell(IReadOnlyList<SetBar> Bars, int Lanes, IReadOnlyList<FlowStep> Flows, DateTimeOffset Opens, DateTimeOffset Closes)
{
    /// <summary>Quarter hours in the window.</summary>
    public double Quarters => QuarterOf(Closes);

    /// <summary>A moment, in quarter hours after the window's opening.</summary>
    public double QuarterOf(DateTimeOffset moment) => (moment - Opens) / BoardPlace.QuarterHour;
}

/// <summary>A set as a bar.</summary>
/// <param name="Set">The set.</param>
/// <param name="Lane">Its lane, 0 first.</param>
/// <param name="Left">Where it begins, as a share of the window, 0–1.</param>
/// <param name="Right">Where it ends, as a share of the window, 0–1.</param>
/// <param name="Name">What stands on it.</param>
/// <param name="NameLeft">Where its name begins, as a share of the window, 0–1: on the bar, or beside one that is too short.</param>
public sealed record SetBar(PlannedSet Set, int Lane, double Left, double Right, string Name, double NameLeft);

/// <summary>The flow from a moment on.</summary>
/// <param name="At">The moment as a share of the window, 0–1.</param>
/// <param name="FlowM3PerH">Flow of all sets that run then. [m³/h]</param>
public sealed record FlowStep(double At, double FlowM3PerH);
