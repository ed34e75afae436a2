using EstateWater.Web.Features.Estate;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Owner;

/// <summary>Whether the estate is safe under what was decided, and whether newer advice differs from it.</summary>
/// <param name="Answer">Judges the published plan; where none is published for the days ahead, the advice.</param>
/// <param name="NewerAdvice">One sentence where the newest advice is another than what was published; null where it is the same or nothing is published.</param>
public sealed record Verdict(EstateAnswer Answer, string? NewerAdvice)
{
    /// <summary>Of a snapshot.</summary>
    public static Verdict From(EstateSnapshot snapshot, UnitChoice units)
    {
        var ahead = PublishedAhead.Of(snapshot);
        if (ahead.Plan is not { } decided)
        {
            var advised = EstateAnswer.From(snapshot.Plan, snapshot.Today, units, "the plan advised, which is not published");
            return new Verdict(advised, ahead.Problem is { } problem ? $"The published plan can no longer be kept: {problem.In(units)}" : null);
        }

        var answer = EstateAnswer.From(decided, snapshot.Today, units, "the published plan");
        return new Verdict(answer, Newer(snapshot, answer, units));
    }

    private static string? Newer(EstateSnapshot snapshot, EstateAnswer published, UnitChoice units)
    {
        var difference = PlanDifference.Between(snapshot.Plan, snapshot.Published, snapshot.TimeZone);
        if (difference.Changes.Count == 0)
        {
            return null;
        }

        var advised = EstateAnswer.From(snapshot.Plan, snapshot.Today, units).Unsafe;
        var follows = advised == published.Unsafe ? "as many blocks are safe with it"
            : $"with it {EstateText.Count(advised)} {(advised == 1 ? "block is" : "blocks are")} not safe";
        return $"Newer advice is not published yet: {difference.Summary(units).TrimEnd('.')}; {follows}.";
    }
}
