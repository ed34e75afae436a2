using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>What publishing would change: the planned sets against those of the last published plan that have not begun.</summary>
/// <param name="Changes">What differs, by valve and time.</param>
/// <param name="HoursMore">Hours more than before; negative when fewer. [h]</param>
/// <param name="M3More">Water more than before; negative when less. [m³]</param>
public sealed record PlanDifference(IReadOnlyList<SetChange> Changes, double HoursMore, double M3More)
{
    /// <summary>Compares. Sets that began before the plan's moment are history and are not compared.</summary>
    public static PlanDifference Between(Planning.Plan plan, PublishedPlan? last, TimeZoneInfo zone)
    {
        var after = plan.Sets.Select(s => new SetTimes(s.Valve, s.Start, s.Hours, s.FlowM3PerH)).ToList();
        var before = (last?.Sets ?? [])
            .Where(s => s.Start >= plan.AsOf)
            .Select(s => new SetTimes(s.ValveCode, TimeZoneInfo.ConvertTime(s.Start, zone), s.Hours, s.FlowM3PerH))
            .ToList();
        var changes = after.Concat(before)
            .Select(s => s.Valve)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .SelectMany(valve => OfValve(
                before.Where(s => s.Valve == valve).ToList(),
                after.Where(s => s.Valve == valve).ToList()))
            .ToList();
        return new PlanDifference(
            changes,
            after.Sum(s => s.Hours) - before.Sum(s => s.Hours),
            after.Sum(s => s.VolumeM3) - before.Sum(s => s.VolumeM3));
    }

    /// <summary>In one line: 3 sets added, 2 moved, 14 h more.</summary>
    public string Summary(UnitChoice units)
    {
        var parts = new[]
        {
            (Changes.Count(c => c.Before is null), "added"),
            (Changes.Count(c => c.After is null), "taken out"),
            (Changes.Count(c => c is { Before: not null, After: not null }), "changed"),
        };
        var said = parts.Where(p => p.Item1 > 0).Select(p => $"{WeekWords.Count(p.Item1, "set")} {p.Item2}").ToList();
        if (said.Count == 0)
        {
            return "Nothing differs from the last published plan.";
        }

        said.Add(HoursMore == 0 ? "the same hours in all" : $"{units.Hours(Math.Abs(HoursMore))} {(HoursMore > 0 ? "more" : "fewer")}");
        return string.Join(", ", said) + ".";
    }

    private static IEnumerable<SetChange> OfValve(List<SetTimes> before, List<SetTimes> after)
    {
        // Records compare by value at the same instant: what stands in both lists is unchanged.
        var same = before.Intersect(after).ToList();
        before.RemoveAll(same.Contains);
        after.RemoveAll(same.Contains);
        var (gone, come) = (before.OrderBy(s => s.Start).ToList(), after.OrderBy(s => s.Start).ToList());
        return Enumerable.Range(0, Math.Max(gone.Count, come.Count))
            .Select(i => new SetChange(gone.ElementAtOrDefault(i), come.ElementAtOrDefault(i)));
    }
}

/// <summary>One set before and after.</summary>
/// <param name="Before">As last published; null for a set that is added.</param>
/// <param name="After">As planned now; null for a set that is taken out.</param>
public sealed record SetChange(SetTimes? Before, SetTimes? After);

/// <summary>When a valve opens, how long and how much.</summary>
/// <param name="Valve">The valve.</param>
/// <param name="Start">When it opens.</param>
/// <param name="Hours">How long. [h]</param>
/// <param name="FlowM3PerH">Its flow. [m³/h]</param>
public sealed record SetTimes(string Valve, DateTimeOffset Start, double Hours, double FlowM3PerH)
{
    /// <summary>Its water. [m³]</summary>
    public double VolumeM3 => Hours * FlowM3PerH;

    /// <summary>In words: Tue 21 Jan 20:00, 6 h.</summary>
    public string Words(UnitChoice units) => $"{units.DayClock(Start)}, {units.Hours(Hours)}";
}
