namespace EstateWater.Planning;

/// <summary>Bands out of ensembles.</summary>
internal static class TensionBands
{
    /// <summary>Tenth, middle and ninetieth percentile (Hyndman and Fan 1996, type 7), to a hundredth of a bar.</summary>
    public static TensionBand OfMpa(double[] tensionsMpa)
    {
        var sorted = tensionsMpa.Order().ToArray();
        double At(double share)
        {
            var place = share * (sorted.Length - 1);
            var below = (int)place;
            return Math.Round(10 * (sorted[below] + ((place - below) * (sorted[Math.Min(below + 1, sorted.Length - 1)] - sorted[below]))), 2);
        }

        return new TensionBand(At(0.1), At(0.5), At(0.9));
    }
}
