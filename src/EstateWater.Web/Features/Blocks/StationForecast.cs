using EstateWater.Agronomy.Statistics;
using EstateWater.Data.Model;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Blocks;

/// <summary>What a station expects, by the latest forecast that was known.</summary>
internal static class StationForecast
{
    /// <summary>The members of the latest forecast by day, from today on; one member where it is no ensemble.</summary>
    public static Dictionary<DateOnly, IReadOnlyList<ForecastDay>> Latest(string stationCode, EstateSnapshot snapshot)
    {
        var known = snapshot.Contents.Forecasts.Where(day => day.StationCode == stationCode && day.IssuedAt <= snapshot.AsOf).ToList();
        var issued = known.Select(day => day.IssuedAt).DefaultIfEmpty().Max();
        return known
            .Where(day => day.IssuedAt == issued && day.Date >= snapshot.Today)
            .GroupBy(day => day.Date)
            .ToDictionary(group => group.Key, group => (IReadOnlyList<ForecastDay>)[.. group]);
    }

    /// <summary>The middle of a day's members.</summary>
    public static double Middle(IReadOnlyList<ForecastDay> members, Func<ForecastDay, double> value) =>
        Descriptive.Median([.. members.Select(value)]);
}
