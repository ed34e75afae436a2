using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Statistics;

namespace EstateWater.Agronomy.Soil;

/// <summary>Neutron counts, their ratio to a standard, and how sure they are. Only licensed and trained people handle the probe; local rules hold.</summary>
[Method(
    "Neutron probe count ratio, counting error and calibration",
    Source = "Counting (Poisson) statistics, variance = mean; Haverkamp, Vauclin & Vachaud (1984), Soil Sci. 137:78–90, for the calibration's part in the error",
    Check = "Counts of 8000 and 16000: ratio 0.5, error 0.0068465; worked out by hand")]
public static class NeutronProbe
{
    /// <summary>Count ratio. [–]</summary>
    /// <param name="count">In the tube, 0 or more.</param>
    /// <param name="standardCount">In the standard of the same session, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double CountRatio(double count, double standardCount) =>
        Require.AtLeast(count, 0, "counts") / Require.Above(standardCount, 0, "counts");

    /// <summary>Standard deviation of the count ratio from counting alone. [–]</summary>
    /// <param name="count">In the tube, above 0.</param>
    /// <param name="standardCount">In the standard, above 0.</param>
    /// <param name="prescale">Counts for each one shown, at least 1: some gauges show the count divided by 16.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>CR·√(1∕N + 1∕S) with true counts.</remarks>
    public static double CountRatioError(double count, double standardCount, double prescale = 1)
    {
        var ratio = CountRatio(Require.Above(count, 0, "counts"), standardCount);
        return ratio * Math.Sqrt(((1 / count) + (1 / standardCount)) / Require.AtLeast(prescale, 1, "counts for each one shown"));
    }

    /// <summary>Fits a calibration to cores of known water content.</summary>
    /// <param name="countRatios">At least three, wet and dry, not all alike.</param>
    /// <param name="waterContents">As many, 0–1. [m³/m³]</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, not as many, or outside their range.</exception>
    /// <remarks>A calibration holds for one standard, one tube material, one soil, and not above about 15 cm, where neutrons escape.</remarks>
    public static ProbeCalibrationFit Calibrate(IReadOnlyList<double> countRatios, IReadOnlyList<double> waterContents)
    {
        foreach (var content in Require.Values(waterContents, 3))
        {
            Require.InRange(content, 0, 1, "m³/m³", nameof(waterContents));
        }

        var line = LeastSquares.Line(countRatios, waterContents);
        return new ProbeCalibrationFit(new ProbeCalibrationLine(line.Coefficients[0], line.Coefficients[1]), line.ResidualStandardDeviation, line.Points);
    }
}

/// <summary>Water content = intercept + slope · count ratio.</summary>
/// <param name="Intercept">[m³/m³]</param>
/// <param name="Slope">[m³/m³ per unit of count ratio]</param>
public sealed record ProbeCalibrationLine(double Intercept, double Slope)
{
    /// <summary>Water content; may fall outside 0–1, which says that the calibration does not fit. [m³/m³]</summary>
    /// <param name="countRatio">0 or more. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public double WaterContent(double countRatio) => Intercept + (Slope * Require.AtLeast(countRatio, 0, "(count ratio)"));

    /// <summary>Standard deviation of the water content from counting alone. [m³/m³]</summary>
    /// <param name="countRatioError">0 or more, see <see cref="NeutronProbe.CountRatioError"/>. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public double WaterContentError(double countRatioError) => Math.Abs(Slope) * Require.AtLeast(countRatioError, 0, "(count ratio)");
}

/// <summary>A calibration and how well it fits.</summary>
/// <param name="Line">The calibration.</param>
/// <param name="ResidualStandardDeviation">About 0.01 or less is good; from memory, to be checked. [m³/m³]</param>
/// <param name="Points">Cores used.</param>
public sealed record ProbeCalibrationFit(ProbeCalibrationLine Line, double ResidualStandardDeviation, int Points);
