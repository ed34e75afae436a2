namespace EstateWater.Simulation.Weather;

/// <summary>The air a leaf feels at one hour of a day.</summary>
/// <param name="TemperatureC">[°C]</param>
/// <param name="VpdKPa">Vapour pressure deficit. [kPa]</param>
/// <param name="RadiationWPerM2">Global radiation. [W/m²]</param>
public readonly record struct Air(double TemperatureC, double VpdKPa, double RadiationWPerM2);

/// <summary>How a day's numbers spread over its hours: radiation as half a sine, temperature as a sine that peaks after noon.</summary>
public static class DiurnalCourse
{
    private const double PeakAfterNoonHours = 2.5;
    private const double CoolingHours = 4.5;

    /// <summary>The air at an hour of sun time (12 is solar noon).</summary>
    public static Air At(DayWeather day, double latitudeDegrees, double solarHour)
    {
        var length = Sun.DayLengthHours(day.Date, latitudeDegrees);
        var temperature = Temperature(day, length, solarHour);
        var vpd = Math.Max(0.05, DayWeather.Saturation(temperature) - day.VapourPressureKPa);
        return new Air(temperature, vpd, Radiation(day, length, solarHour));
    }

    private static double Radiation(DayWeather day, double length, double solarHour)
    {
        var phase = (solarHour - 12 + (length / 2)) / length;
        var peak = day.SolarMjPerM2 * 1e6 / 3600 * Math.PI / (2 * length);
        return phase is <= 0 or >= 1 ? 0 : peak * Math.Sin(Math.PI * phase);
    }

    private static double Temperature(DayWeather day, double length, double solarHour)
    {
        var sunrise = 12 - (length / 2);
        var peak = 12 + PeakAfterNoonHours;
        var range = day.TMaxC - day.TMinC;
        if (solarHour >= sunrise && solarHour <= peak)
        {
            return day.TMinC + (range * Math.Sin(Math.PI / 2 * (solarHour - sunrise) / (peak - sunrise)));
        }

        var hoursAfterPeak = solarHour > peak ? solarHour - peak : solarHour + 24 - peak;
        return day.TMinC + (range * Math.Exp(-hoursAfterPeak / CoolingHours));
    }
}
