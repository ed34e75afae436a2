using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>The daily root-zone water balance of FAO-56, with a share of the root zone that drippers wet.</summary>
/// <remarks>
/// <para>Allen et al. (1998), Eq. 80–88. With the whole root zone wetted it is exactly that bucket.</para>
/// <para>With drip the root zone is two buckets side by side: rain falls on both by area, irrigation only on the wetted one, and what it cannot hold
/// percolates although the other is dry. The vine draws from each by the water left in it; stress follows the water left in both together. This split is ours.</para>
/// <para>Water is conserved: depletion at the end = at the start + ET + deep percolation − rain − irrigation.</para>
/// </remarks>
[Method(
    "Daily root-zone water balance",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 80–88; the split into a wetted and another part is ours",
    Check = "FAO-56 Examples 37 and 38, water at the start and at the end of the day; water conserved to 1e-9 mm over any season")]
public static class DailyBalance
{
    /// <summary>One day.</summary>
    /// <param name="rootZone">The root zone.</param>
    /// <param name="start">Depletion when the day starts.</param>
    /// <param name="day">What the day brings.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static BalanceDay Step(RootZoneSettings rootZone, RootZoneDepletion start, BalanceInputs day)
    {
        ArgumentNullException.ThrowIfNull(rootZone);
        day.Validate();
        var total = rootZone.TotalAvailableWaterMm;
        var wettedTotal = total * rootZone.WettedFraction;
        var wetted = new Bucket(wettedTotal, Require.InRange(start.WettedMm, 0, wettedTotal + RoundingMm, "mm"));
        var other = new Bucket(total - wettedTotal, Require.InRange(start.OtherMm, 0, total - wettedTotal + RoundingMm, "mm"));
        var wettedWaterMm = (day.RainMm * rootZone.WettedFraction) + day.IrrigationMm;
        var otherWaterMm = day.RainMm * (1 - rootZone.WettedFraction);
        var early = rootZone.EventTiming == WaterEventTiming.StartOfDay;

        var percolation = early ? wetted.Receive(wettedWaterMm) + other.Receive(otherWaterMm) : 0;
        var cropEt = day.ReferenceEtMm * day.CropCoefficient;
        var fraction = rootZone.AdjustDepletionFraction ? RootZone.AdjustedDepletionFraction(rootZone.DepletionFraction, cropEt) : rootZone.DepletionFraction;
        var left = wetted.LeftMm + other.LeftMm;
        var unstressed = (1 - fraction) * total;
        var stress = Math.Min(1, left / unstressed) * rootZone.SaltStressCoefficient;

        // ET is Ks·ETc, never more than is left; as a share of what is left it is the same for both parts.
        var drawn = Math.Min(1, rootZone.SaltStressCoefficient * cropEt / Math.Max(left, unstressed));
        var et = wetted.Give(drawn) + other.Give(drawn);
        percolation += early ? 0 : wetted.Receive(wettedWaterMm) + other.Receive(otherWaterMm);
        return new BalanceDay(new RootZoneDepletion(wetted.DepletionMm, other.DepletionMm), cropEt, et, stress, fraction, percolation);
    }

    /// <summary>Day after day.</summary>
    /// <param name="rootZone">The root zone.</param>
    /// <param name="start">Depletion when the first day starts.</param>
    /// <param name="days">The days, in order.</param>
    /// <returns>As many days.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static IReadOnlyList<BalanceDay> Season(RootZoneSettings rootZone, RootZoneDepletion start, IEnumerable<BalanceInputs> days)
    {
        ArgumentNullException.ThrowIfNull(days);
        var results = new List<BalanceDay>();
        foreach (var day in days)
        {
            results.Add(Step(rootZone, start, day));
            start = results[^1].End;
        }

        return results;
    }

    private const double RoundingMm = 1e-6;

    /// <summary>A part of the root zone: how much it can hold, how much of that is missing.</summary>
    private struct Bucket(double totalMm, double depletionMm)
    {
        public double DepletionMm { get; private set; } = Math.Min(depletionMm, totalMm);

        public readonly double LeftMm => totalMm - DepletionMm;

        /// <summary>Takes water in; gives back what percolates.</summary>
        public double Receive(double waterMm)
        {
            // One subtraction for both keeps depletion from ending a rounding below nothing.
            var balance = DepletionMm - waterMm;
            DepletionMm = Math.Max(0, balance);
            return Math.Max(0, -balance);
        }

        /// <summary>Gives a share of what is left; says how much that is.</summary>
        public double Give(double share)
        {
            var waterMm = share * LeftMm;
            DepletionMm = Math.Min(totalMm, DepletionMm + waterMm);
            return waterMm;
        }
    }
}
