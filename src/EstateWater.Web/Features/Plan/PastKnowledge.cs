using EstateWater.Data.Model;
using EstateWater.Planning;

namespace EstateWater.Web.Features.Plan;

/// <summary>What an estate knew on a morning in the past.</summary>
public static class PastKnowledge
{
    /// <summary>
    /// As <see cref="PlanRequests.From"/>, but nothing that is dated by its day alone counts on that day itself: who looks
    /// back to a morning cannot know whether the round of that day had been walked by then.
    /// </summary>
    /// <param name="contents">The estate as it is known now.</param>
    /// <param name="asOf">The morning.</param>
    /// <param name="horizonDays">Days ahead, 1 to 30. [d]</param>
    public static PlanRequest At(EstateContents contents, DateTimeOffset asOf, int horizonDays)
    {
        ArgumentNullException.ThrowIfNull(contents);
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(asOf, TimeZoneInfo.FindSystemTimeZoneById(contents.Estate.TimeZone)).DateTime);
        var before = contents with
        {
            Stages = [.. contents.Stages.Where(s => s.Date < today)],
            SoilMoistures = [.. contents.SoilMoistures.Where(s => s.Date < today)],
            CanopyVisits = [.. contents.CanopyVisits.Where(c => c.Date < today)],
        };
        return PlanRequests.From(before, asOf, horizonDays);
    }
}
