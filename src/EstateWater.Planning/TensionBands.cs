using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning;

/// <summary>Bands out of ensembles.</summary>
internal static class TensionBands
{
    /// <summary>Tenth, middle and ninetieth percentile (Hyndman and Fan 1996, type 7), to a hundredth of a bar.</summary>
    public static TensionBand OfMpa(double[] tensionsMpa)
    {
        // Sorted once: the quantiles then have little left to do.
        double[] sorted = [.. tensionsMpa];
        Array.Sort(sorted);
        double At(double percent) => Math.Round(Conversions.BarPerMegapascal * Quantile.Of(sorted, percent), 2);
        return new TensionBand(At(10), At(50), At(90));
    }
}
