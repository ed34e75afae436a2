using EstateWater.Data.Model;
using EstateWater.Data.Store;

namespace EstateWater.Web.Features.Sets;

/// <summary>Published sets as they stand now.</summary>
public static class SetLines
{
    /// <summary>
    /// The sets that count, in order of start: of each plan those that begin before the next plan was published,
    /// so that last night's sets can be confirmed although a new plan came out this morning. Of a plan that was taken back,
    /// only what was run all the same.
    /// </summary>
    public static IReadOnlyList<SetLine> Standing(IEnumerable<PublishedPlan> plans, EstateContents contents, IReadOnlySet<Guid>? withPhoto = null)
    {
        var ordered = plans.OrderBy(p => p.PublishedAt).ThenBy(p => p.Id).ToList();

        // What was run stays run when a later plan names the same opening of the valve again.
        var said = ordered
            .SelectMany(plan => plan.Sets)
            .Where(set => set.Confirmation is not null)
            .GroupBy(set => (set.ValveCode, set.Start))
            .ToDictionary(same => same.Key, same => same.First());
        var taken = ordered.Where(plan => plan.WithdrawnAt is not null).SelectMany(plan => plan.Sets.Where(set => set.Confirmation is not null)).ToList();
        ordered.RemoveAll(plan => plan.WithdrawnAt is not null);
        var until = PublishedPlans.FollowedUntil(ordered.Select(plan => (plan.Id, plan.PublishedAt)));
        return ordered
            .SelectMany(plan => plan.Sets.Where(s => s.Start < until[plan.Id]))
            .Concat(taken)
            .DistinctBy(set => (set.ValveCode, set.Start))
            .Select(set => Line(set, set.Confirmation is null ? said.GetValueOrDefault((set.ValveCode, set.Start)) : set, contents, withPhoto))
            .OrderBy(line => line.Start)
            .ThenBy(line => line.Valve, StringComparer.Ordinal)
            .ToList();
    }

    /// <summary>The nights to look at now: the last one that ended, and the first that has not.</summary>
    public static IReadOnlyList<SetLine> Near(IReadOnlyList<SetLine> lines, DateTimeOffset now)
    {
        var nights = lines.GroupBy(l => l.Night).OrderBy(n => n.Key).ToList();
        var next = nights.FindIndex(n => n.Any(l => l.End > now));
        return (next < 0 ? nights.TakeLast(1) : nights.Skip(Math.Max(0, next - 1)).Take(next == 0 ? 1 : 2))
            .SelectMany(n => n)
            .ToList();
    }

    private static SetLine Line(PublishedSet set, PublishedSet? said, EstateContents contents, IReadOnlySet<Guid>? withPhoto)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(contents.Estate.TimeZone);
        var start = TimeZoneInfo.ConvertTime(set.Start, zone);
        var opens = contents.Sources.FirstOrDefault(s => s.Code == set.SourceCode)?.DailyFrom ?? TimeOnly.MinValue;
        return new SetLine
        {
            SetId = set.Id,
            Valve = set.ValveCode,
            Source = set.SourceCode,
            Blocks = contents.Blocks
                .Where(b => b.ValveCode == set.ValveCode)
                .Select(b => b.Name is null ? b.Code : $"{b.Code} {b.Name}")
                .ToList(),
            Start = start,
            End = TimeZoneInfo.ConvertTime(set.End, zone),
            Hours = set.Hours,
            FlowM3PerH = set.FlowM3PerH,
            Night = DateOnly.FromDateTime(start.DateTime - opens.ToTimeSpan()),
            Confirmed = said is null ? null : Confirmed(said, zone, withPhoto),
        };
    }

    private static ConfirmedHours Confirmed(PublishedSet set, TimeZoneInfo zone, IReadOnlySet<Guid>? withPhoto)
    {
        var said = set.Confirmation!;
        return new ConfirmedHours(said.Hours, said.MeterM3, said.ConfirmedBy, said.Note, TimeZoneInfo.ConvertTime(said.EnteredAt, zone))
        {
            StartedAt = TimeZoneInfo.ConvertTime(said.StartedAt, zone),
            ReceivedAt = TimeZoneInfo.ConvertTime(said.ReceivedAt, zone),
            Meter = (said.MeterBeforeM3, said.MeterAfterM3),
            NotRun = said.NotRun,
            EntryId = said.EntryId,
            SetId = set.Id,
            Entries = [.. set.Confirmations.Select(c => c.EntryId)],
            Photos = [.. set.Confirmations.Where(c => withPhoto?.Contains(c.EntryId) == true).Select(c => PhotoEndpoint.PathOf(c.EntryId))],
        };
    }
}
