using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Weather;
using EstateWater.Data.Model;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Blocks;

/// <summary>Weather and water of one day in a block; null where nothing was measured.</summary>
/// <param name="Date">The day.</param>
/// <param name="IsForecast">Whether it lies ahead.</param>
/// <param name="TMaxC">Highest air temperature; of a forecast, the middle of its members. [°C]</param>
/// <param name="MiddayVpdKpa">Vapour pressure deficit when leaves are read. [kPa]</param>
/// <param name="RainMm">Rain; of a forecast, the mean of its members. [mm]</param>
/// <param name="AppliedMm">Water put on through the block's valve. [mm]</param>
public sealed record HistoryDay(DateOnly Date, bool IsForecast, double? TMaxC, double? MiddayVpdKpa, double? RainMm, double? AppliedMm);

/// <summary>Puts together the days of a block.</summary>
internal static class HistoryDays
{
    public static IReadOnlyList<HistoryDay> Of(Block block, EstateSnapshot snapshot, DateOnly from)
    {
        var applied = AppliedByDay(block, snapshot);
        var measured = snapshot.Contents.Weather
            .Where(day => day.StationCode == block.StationCode && day.Date >= from && day.Date <= snapshot.Today)
            .ToDictionary(day => day.Date);
        var forecast = StationForecast.Latest(block.StationCode, snapshot);
        var last = forecast.Keys.Append(snapshot.Today).Max();
        var days = new List<HistoryDay>();
        for (var date = from; date <= last; date = date.AddDays(1))
        {
            var water = applied.TryGetValue(date, out var mm) ? mm : (double?)null;
            days.Add(measured.TryGetValue(date, out var day)
                ? new HistoryDay(date, false, day.TMaxC, Vpd(day), day.RainMm, water)
                : Expected(date, forecast.GetValueOrDefault(date) ?? [], water));
        }

        return days;
    }

    private static HistoryDay Expected(DateOnly date, IReadOnlyList<ForecastDay> members, double? water) => members.Count == 0
        ? new HistoryDay(date, false, null, null, null, water)
        : new HistoryDay(
            date,
            true,
            StationForecast.Middle(members, member => member.TMaxC),
            StationForecast.Middle(members, Vpd),
            members.Average(member => member.RainMm),
            water);

    private static Dictionary<DateOnly, double> AppliedByDay(Block block, EstateSnapshot snapshot)
    {
        var rate = DripLine.ApplicationRateMmPerH(block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);
        return snapshot.Contents.AppliedWaters
            .Where(set => set.ValveCode == block.ValveCode && set.StartedAt <= snapshot.AsOf)
            .GroupBy(set => snapshot.DayOf(set.StartedAt))
            .ToDictionary(group => group.Key, group => group.Sum(set => set.Hours * rate));
    }

    private static double Vpd(WeatherDayBase day) =>
        VapourPressureDeficit.NearSolarNoonKpa(new DailyWeather(day.Date, day.TMaxC, day.TMinC, day.RhMaxPct, day.RhMinPct));
}
