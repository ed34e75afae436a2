using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Owner;

/// <summary>What was decided: the plan published last, night by night.</summary>
/// <param name="Sentence">The same in a sentence.</param>
/// <param name="Nights">In order; empty until a plan is published.</param>
public sealed record Decided(string Sentence, IReadOnlyList<DecidedNight> Nights)
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
            [.. lines.GroupBy(line => line.Night).OrderBy(night => night.Key).Select(night => new DecidedNight(
                night.Key, night.Count(), night.Sum(M3), night.Count(line => line.Confirmed is not null), night.All(line => line.End <= snapshot.AsOf)))]);
    }

    private static string Advised(Planning.Plan plan, UnitChoice units) => plan.Sets.Count == 0
        ? "The plan advises no water."
        : $"The plan advises {Sets(plan.Sets.Count)}, {units.VolumeOf(plan.Sets.Sum(set => set.VolumeM3))}, within {EstateText.Count(plan.HorizonDays)} days.";

    private static double M3(SetLine line) => line.Hours * line.FlowM3PerH;

    private static string Sets(int count) => count == 1 ? "one set" : $"{EstateText.Count(count)} sets";

    // The year goes without saying.
    private const string Nearby = "ddd d MMM, HH:mm";
}

/// <summary>One night of a published plan.</summary>
/// <param name="Night">The day on which it begins.</param>
/// <param name="Sets">Its sets.</param>
/// <param name="VolumeM3">Their water, by hours and flow. [m³]</param>
/// <param name="Confirmed">Sets that the irrigators confirmed.</param>
/// <param name="IsOver">Whether its last set has closed.</param>
public sealed record DecidedNight(DateOnly Night, int Sets, double VolumeM3, int Confirmed, bool IsOver);
