using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>The vine's year: which season a date belongs to, in either hemisphere.</summary>
[Method("Season year", Source = "Common practice, no published source: north the calendar year, south 1 July to 30 June named by the year of harvest", Check = "Both sides of each boundary")]
public static class Season
{
    /// <summary>Whether the place is south of the equator; the equator itself counts as north.</summary>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside −90 to 90, or not a number.</exception>
    public static bool IsSouthern(double latitudeDegrees) => WeatherInput.Latitude(latitudeDegrees) < 0;

    /// <summary>The season of a date, named by the year of its harvest.</summary>
    /// <param name="date">The day.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is outside its range.</exception>
    public static int YearOf(DateOnly date, double latitudeDegrees) =>
        IsSouthern(latitudeDegrees) && date.Month >= 7 ? date.Year + 1 : date.Year;

    /// <summary>First day of a season: 1 January, or 1 July of the year before.</summary>
    /// <param name="year">Year of the harvest.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is outside its range.</exception>
    public static DateOnly FirstDay(int year, double latitudeDegrees) =>
        IsSouthern(latitudeDegrees) ? new DateOnly(year - 1, 7, 1) : new DateOnly(year, 1, 1);

    /// <summary>Last day of a season: 31 December, or 30 June.</summary>
    /// <param name="year">Year of the harvest.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is outside its range.</exception>
    public static DateOnly LastDay(int year, double latitudeDegrees) => FirstDay(year + 1, latitudeDegrees).AddDays(-1);
}
