using System.Globalization;
using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Drip;

/// <summary>A water meter against what the emitters should have given.</summary>
/// <param name="ExpectedM3">Flow as declared times hours. [m³]</param>
/// <param name="MeterM3">What the meter showed. [m³]</param>
[Method(
    "Meter against expected volume",
    Source = "Common practice, no published source: 5 and 10 %",
    Check = "Each side of each limit")]
public sealed record MeterCheck(double ExpectedM3, double MeterM3)
{
    /// <summary>Beyond this share something is wrong that a person should look for. Common practice, no published source. [–]</summary>
    public const double LargeDifference = 0.10;

    /// <summary>Up to this share meters and hours are not better. Common practice, no published source. [–]</summary>
    public const double SmallDifference = 0.05;

    /// <summary>Compares a meter with what was expected.</summary>
    /// <param name="flowM3PerH">As declared, above 0. [m³/h]</param>
    /// <param name="hours">Above 0. [h]</param>
    /// <param name="meterM3">0 or more. [m³]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static MeterCheck Of(double flowM3PerH, double hours, double meterM3) =>
        new(Require.Above(flowM3PerH, 0, "m³/h") * Require.Above(hours, 0, "h"), Require.AtLeast(meterM3, 0, "m³"));

    /// <summary>Difference as a share of what was expected; above 0 when the meter shows more. [–]</summary>
    public double Difference => (MeterM3 / ExpectedM3) - 1;

    /// <summary>Whether a person should look.</summary>
    public bool IsLarge => Math.Abs(Difference) > LargeDifference;

    /// <summary>What it may mean, in words.</summary>
    public string Words => Difference switch
    {
        > LargeDifference => $"{Pct} more than expected: look for a leak, an open flushing end, another valve open, or pressure too high.",
        > SmallDifference => $"{Pct} more than expected: watch it.",
        < -LargeDifference => $"{Pct} less than expected: look for clogged emitters or filter, low pressure, a valve not fully open, or a shorter run.",
        < -SmallDifference => $"{Pct} less than expected: watch it.",
        _ => "Meter and hours agree.",
    };

    private string Pct => string.Create(CultureInfo.InvariantCulture, $"{100 * Math.Abs(Difference):0} %");
}
