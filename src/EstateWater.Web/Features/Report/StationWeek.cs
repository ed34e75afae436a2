using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Weather;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Report;

/// <summary>Some days of weather in a few numbers. Sums are of the days that are known, never stretched to a week.</summary>
/// <param name="Days">Days that are known, of seven.</param>
/// <param name="From">The first of them.</param>
/// <param name="To">The last of them.</param>
/// <param name="TMaxC">Mean of the highest temperatures. [°C]</param>
/// <param name="HottestC">The hottest day. [°C]</param>
/// <param name="HottestOn">When.</param>
/// <param name="TMinC">Mean of the lowest temperatures. [°C]</param>
/// <param name="RainMm">Sum; null where no day gives rain. [mm]</param>
/// <param name="Et0Mm">Sum of reference evapotranspiration. [mm]</param>
public sealed record WeekSums(int Days, DateOnly From, DateOnly To, double TMaxC, double HottestC, DateOnly HottestOn, double TMinC, double? RainMm, double Et0Mm);

/// <summary>What is usual at a station around a date, from earlier years of its own.</summary>
/// <param name="Years">Years that gave days.</param>
/// <param name="TMaxC">Highest temperature of a day. [°C]</param>
/// <param name="TMinC">Lowest temperature of a day. [°C]</param>
/// <param name="RainMm">Rain in seven days; null where no day gives rain. [mm]</param>
/// <param name="Et0Mm">Reference evapotranspiration in seven days. [mm]</param>
public sealed record UsualWeek(int Years, double TMaxC, double TMinC, double? RainMm, double Et0Mm);

/// <summary>A station's past week, the week expected, and what is usual for the date.</summary>
/// <param name="Station">Its code.</param>
/// <param name="Past">The seven days before today; null when none was measured.</param>
/// <param name="Ahead">Today and the six days after; null without a forecast.</param>
/// <param name="ForecastIssuedAt">When that forecast was issued, estate time; null without one.</param>
/// <param name="Usual">What is usual; null without earlier years.</param>
public sealed record StationWeek(string Station, WeekSums? Past, WeekSums? Ahead, DateTimeOffset? ForecastIssuedAt, UsualWeek? Usual)
{
    private const int Week = 7;

    /// <summary>A year before this one begins so far back: this season is not held against itself. [d]</summary>
    private const int EarlierYearsDays = 180;

    /// <summary>Every station of a snapshot, each reckoned once.</summary>
    public static IReadOnlyDictionary<string, StationWeek> All(EstateSnapshot snapshot)
    {
        var measured = snapshot.Contents.Weather.Where(day => day.Date < snapshot.Today).ToLookup(day => day.StationCode);
        return snapshot.Contents.Stations.ToDictionary(station => station.Code, station => Of(station, [.. measured[station.Code]], snapshot));
    }

    private static StationWeek Of(Station station, IReadOnlyList<WeatherDay> measured, EstateSnapshot snapshot)
    {
        var site = new StationSite(station.LatitudeDegrees, station.LongitudeDegrees, station.ElevationM, station.WindHeightM);
        var today = snapshot.Today;
        var forecast = StationForecast.Latest(station.Code, snapshot);
        return new StationWeek(
            station.Code,
            Sums([.. measured.Where(day => day.Date >= today.AddDays(-Week)).OrderBy(day => day.Date).Select(day => WeekDay.Of(day, site))]),
            Sums([.. forecast.Where(day => day.Key < today.AddDays(Week)).OrderBy(day => day.Key).Select(day => WeekDay.Of(day.Key, day.Value, site))]),
            forecast.Count > 0 ? TimeZoneInfo.ConvertTime(forecast.First().Value[0].IssuedAt, snapshot.TimeZone) : null,
            UsualOf(measured, site, today));
    }

    private static WeekSums? Sums(IReadOnlyList<WeekDay> days)
    {
        if (days.Count == 0)
        {
            return null;
        }

        var hottest = days.MaxBy(day => day.TMaxC)!;
        var rain = days.Select(day => day.RainMm).OfType<double>().ToList();
        return new WeekSums(
            days.Count,
            days[0].Date,
            days[^1].Date,
            days.Average(day => day.TMaxC),
            hottest.TMaxC,
            hottest.Date,
            days.Average(day => day.TMinC),
            rain.Count > 0 ? rain.Sum() : null,
            days.Sum(day => day.Et0Mm));
    }

    private static UsualWeek? UsualOf(IReadOnlyList<WeatherDay> measured, StationSite site, DateOnly today)
    {
        var earlier = measured.Where(day => day.Date < today.AddDays(-EarlierYearsDays)).ToList();
        DayNormal? Of(Func<WeatherDay, double?> value) =>
            DayNormal.Of(earlier.Select(day => (day.Date, Value: value(day))).Where(day => day.Value is not null).Select(day => (day.Date, day.Value!.Value)), today);
        return Of(day => day.TMaxC) is { } highest && Of(day => day.TMinC) is { } lowest && Of(day => ReferenceEvapotranspiration.Daily(WeekDay.Weather(day), site).Mm) is { } et0
            ? new UsualWeek(highest.Years, highest.Mean, lowest.Mean, Week * Of(day => day.RainMm)?.Mean, Week * et0.Mean)
            : null;
    }

    /// <summary>One day as the sums take it.</summary>
    private sealed record WeekDay(DateOnly Date, double TMaxC, double TMinC, double? RainMm, double Et0Mm)
    {
        public static WeekDay Of(WeatherDayBase day, StationSite site) =>
            new(day.Date, day.TMaxC, day.TMinC, day.RainMm, ReferenceEvapotranspiration.Daily(Weather(day), site).Mm);

        /// <summary>Of a forecast's members: their middle, and the mean of their rain, which has no middle but nought on most days.</summary>
        public static WeekDay Of(DateOnly date, IReadOnlyList<ForecastDay> members, StationSite site) => new(
            date,
            StationForecast.Middle(members, member => member.TMaxC),
            StationForecast.Middle(members, member => member.TMinC),
            members.Average(member => member.RainMm),
            Descriptive.Median([.. members.Select(member => ReferenceEvapotranspiration.Daily(Weather(member), site).Mm)]));

        public static DailyWeather Weather(WeatherDayBase day) =>
            new(day.Date, day.TMaxC, day.TMinC, day.RhMaxPct, day.RhMinPct, day.WindMPerS, day.SolarMjPerM2, day.RainMm);
    }
}
