using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Owner;

/// <summary>What was decided: the plan published last.</summary>
/// <param name="Sentence">The same in a sentence.</param>
/// <param name="Nights">In order: the night before and the one to come by themselves, all earlier and all later ones as one; empty until a plan is published.</param>
public sealed record Decided(string Sentence, IReadOnlyList<DecidedNights> Nights)
{
    /// <summary>Of a snapshot.</summary>
    public static Decided From(EstateSnapshot snapshot, UnitChoice units)
    {
        if (snapshot.Published is not { } published)
        {
            return new Decided($"Nothing is published yet. {Advised(snapshot.Plan, units)}", []);
        }

        var lines = SetLines.Standing([published], snapshot.Contents);
        var at = units.Moment(TimeZoneInfo.ConvertTime(published.PublishedAt, snapshot.TimeZone));
        if (lines.Count == 0)
        {
            return new Decided($"{published.PublishedBy} published on {at} that no block gets water.", []);
        }

        var rest = lines.All(line => line.End <= snapshot.AsOf)
            ? $"the last of them ended on {units.Moment(lines.Max(line => line.End))}, and nothing is published for the days ahead."
            : $"the first opens on {units.Date(lines[0].Start, Nearby)}, the last closes on {units.Date(lines.Max(line => line.End), Nearby)}.";
        return new Decided(
            $"{published.PublishedBy} published on {at}: {Sets(lines.Count)}, {units.VolumeOf(lines.Sum(M3))}; {rest}",
            [.. Spans(lines, snapshot.AsOf).Select(span => new DecidedNights(
                Days(span, units), span.Count, span.Sum(M3), SetsDone.Of(span, snapshot.AsOf).Words(units)))]);
    }

    // An owner asks of last night and of tonight; the rest is told in sum.
    private static IEnumerable<List<SetLine>> Spans(IReadOnlyList<SetLine> lines, DateTimeOffset now)
    {
        var nights = lines.Select(line => line.Night).Distinct().Order().ToList();
        var next = lines.Where(line => line.End > now).Select(line => (DateOnly?)line.Night).Min() is { } night ? nights.IndexOf(night) : nights.Count;
        return lines
            .GroupBy(line => Math.Clamp(nights.IndexOf(line.Night) - next, -2, 1))
            .OrderBy(span => span.Key)
            .Select(span => span.ToList());
    }

    private static string Days(List<SetLine> lines, UnitChoice units)
    {
        var nights = lines.Select(line => line.Night).Distinct().Count();
        return nights == 1
            ? units.Day(lines[0].Night)
            : $"{units.Days(lines.Min(line => line.Night), lines.Max(line => line.Night))}, {EstateText.Count(nights)} nights";
    }

    private static string Advised(Planning.Plan plan, UnitChoice units) => plan.Sets.Count == 0
        ? "The plan advises no water."
        : $"The plan advises {Sets(plan.Sets.Count)}, {units.VolumeOf(plan.Sets.Sum(set => set.VolumeM3))}, within {EstateText.Count(plan.HorizonDays)} days.";

    private static double M3(SetLine line) => line.Hours * line.FlowM3PerH;

    private static string Sets(int count) => count == 1 ? "one set" : $"{EstateText.Count(count)} sets";

    // The year goes without saying.
    private const string Nearby = "ddd d MMM, HH:mm";
}

/// <summary>One or more nights of a published plan.</summary>
/// <param name="Days">The days on which they begin, in words.</param>
/// <param name="Sets">Their sets.</param>
/// <param name="VolumeM3">Their water, by hours and flow. [m³]</param>
/// <param name="Done">What became of them, in words.</param>
public sealed record DecidedNights(string Days, int Sets, double VolumeM3, string Done);
