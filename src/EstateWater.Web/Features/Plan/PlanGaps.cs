using EstateWater.Data.Folder;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Plan;

/// <summary>What a folder may lack as a folder, but not for a plan.</summary>
internal static class PlanGaps
{
    /// <summary>A station that blocks follow must have known some weather or a forecast at the moment of the plan.</summary>
    public static IReadOnlyList<Defect> Of(EstateContents contents, DateTimeOffset asOf)
    {
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(asOf, TimeZoneInfo.FindSystemTimeZoneById(contents.Estate.TimeZone)).DateTime);
        var known = contents.Weather.Where(w => w.Date < today).Select(w => w.StationCode)
            .Concat(contents.Forecasts.Where(f => f.IssuedAt <= asOf).Select(f => f.StationCode))
            .ToHashSet();
        return [.. contents.Blocks.Select(b => b.StationCode).Distinct().Order(StringComparer.Ordinal)
            .Where(station => !known.Contains(station))
            .Select(station => new Defect("weather-daily.csv", 1, "date", $"station {station} has no weather before {today:yyyy-MM-dd} and no forecast issued by then; a plan needs one of them"))];
    }
}
