using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>What the heat feels like to people at work. For shade and light wind: full sun can add up to 8 °C (15 °F).</summary>
/// <remarks>A caution, no rule: what an employer must do is in the local rules on heat illness. Not valid beyond the range that Steadman (1979) considered.</remarks>
[Method("Heat index", Source = "Rothfusz (1990), NWS Technical Attachment SR 90-23, with the adjustments of the NWS Weather Prediction Center", Check = "94 cells of the NWS chart, one of them a misprint")]
public static class HeatIndex
{
    /// <summary>Heat index in shade. [°C]</summary>
    /// <param name="tempC">Air temperature in shade. [°C]</param>
    /// <param name="rhPct">Relative humidity, 0–100. [%]</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double OfC(double tempC, double rhPct) => ToCelsius(OfF(ToFahrenheit(WeatherInput.AirTemperature(tempC)), rhPct));

    /// <summary>Heat index in shade, as the Weather Prediction Center computes it. [°F]</summary>
    /// <param name="tempF">Air temperature in shade, −76 to 140. [°F]</param>
    /// <param name="rhPct">Relative humidity, 0–100. [%]</param>
    /// <remarks>
    /// <para>Simple form ½{T + 61 + 1.2 (T − 68) + 0.094 R}; where its mean with T is 80 °F or more, the regression with its adjustments:
    /// less [(13 − R)/4] √[(17 − |T − 95|)/17] for R below 13 and T of 80 to 112; more [(R − 85)/10] [(87 − T)/5] for R above 85 and T of 80 to 87.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double OfF(double tempF, double rhPct)
    {
        Check(tempF, rhPct);
        var simple = 0.5 * (tempF + 61 + (1.2 * (tempF - 68)) + (0.094 * rhPct));
        if ((simple + tempF) / 2 < 80)
        {
            return simple;
        }

        return RegressionF(tempF, rhPct) + (tempF, rhPct) switch
        {
            ( >= 80 and <= 112, < 13) => -(13 - rhPct) / 4 * Math.Sqrt((17 - Math.Abs(tempF - 95)) / 17),
            ( >= 80 and <= 87, > 85) => (rhPct - 85) / 10 * ((87 - tempF) / 5),
            _ => 0,
        };
    }

    /// <summary>Rothfusz's regression as it stands, which the printed NWS chart shows. [°F]</summary>
    /// <param name="tempF">Air temperature in shade, −76 to 140; fitted from 80 upwards. [°F]</param>
    /// <param name="rhPct">Relative humidity, 0–100. [%]</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double RegressionF(double tempF, double rhPct)
    {
        Check(tempF, rhPct);
        var (t, r) = (tempF, rhPct);
        return -42.379 + (2.04901523 * t) + (10.14333127 * r) - (0.22475541 * t * r) - (0.00683783 * t * t) - (0.05481717 * r * r)
            + (0.00122874 * t * t * r) + (0.00085282 * t * r * r) - (0.00000199 * t * t * r * r);
    }

    private static void Check(double tempF, double rhPct)
    {
        Require.InRange(tempF, -76, 140, "°F");
        WeatherInput.Humidity(rhPct);
    }

    private static double ToFahrenheit(double celsius) => (celsius * 1.8) + 32;

    private static double ToCelsius(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
