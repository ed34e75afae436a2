using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>The Grapevine Flowering Veraison model: thermal time above 0 °C from the 60th day of the year.</summary>
[Method("Grapevine Flowering Veraison model (GFV)", Source = "Parker et al. (2011), Aust. J. Grape Wine Res. 17: 206–216; Parker et al. (2013), Agric. For. Meteorol. 180: 249–264", Check = "Hand sums; thermal requirements of Chardonnay and Pinot noir as several sources quote them")]
public static class GrapevineFloweringVeraison
{
    /// <summary>Where the sum starts: 1 March, or 29 August in the south.</summary>
    /// <param name="year">Year of the harvest.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <remarks>Day 60 is 29 February in a leap year; 1 March is kept there too, a day later than the letter of the paper.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is outside its range.</exception>
    public static DateOnly StartOfSum(int year, double latitudeDegrees) =>
        Season.IsSouthern(latitudeDegrees) ? new DateOnly(year - 1, 8, 29) : new DateOnly(year, 3, 1);

    /// <summary>One day's thermal time: its mean temperature, or nothing below 0 °C. [°C·d]</summary>
    /// <param name="meanC">(T_max + T_min)/2. [°C]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside −60 to 60 °C.</exception>
    public static double OfDay(double meanC) => Math.Max(0, WeatherInput.AirTemperature(meanC));

    /// <summary>The day on which a requirement is met; null when it is not, or when a day is missing before it.</summary>
    /// <param name="dailyMeanC">(T_max + T_min)/2 by date. [°C]</param>
    /// <param name="start">First day that counts.</param>
    /// <param name="requirementCd">F*, 1 to 6000. [°C·d]</param>
    /// <remarks>Errors of several days are usual: show a prediction as such, and let an observed stage stand above it.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static ThermalEvent? Reached(IReadOnlyDictionary<DateOnly, double> dailyMeanC, DateOnly start, double requirementCd)
    {
        ArgumentNullException.ThrowIfNull(dailyMeanC);
        Require.InRange(requirementCd, 1, 6000, "°C·d");
        var sum = 0.0;
        for (var date = start; dailyMeanC.TryGetValue(date, out var mean); date = date.AddDays(1))
        {
            sum += OfDay(mean);
            if (sum >= requirementCd)
            {
                return new ThermalEvent(date, sum);
            }
        }

        return null;
    }
}

/// <summary>The day on which a thermal requirement was met.</summary>
/// <param name="Date">The day.</param>
/// <param name="SumCd">The sum at its end. [°C·d]</param>
public sealed record ThermalEvent(DateOnly Date, double SumCd);
