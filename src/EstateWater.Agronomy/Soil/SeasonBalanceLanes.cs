using System.Numerics;
using System.Runtime.CompilerServices;

namespace EstateWater.Agronomy.Soil;

/// <summary>All parameter sets of one block, stepped a day at a time, as many at once as the processor computes. Follows <see cref="DailyBalance"/> line by line.</summary>
internal sealed class SeasonBalanceLanes
{
    private static readonly int Width = Vector<double>.Count;

    private readonly bool early;
    private readonly bool adjust;
    private readonly double[] total;
    private readonly double[] fraction;
    private readonly double[] wettedShare;
    private readonly double[] salt;
    private readonly double[] useFactor;
    private readonly double[] wettedTotal;
    private readonly double[] otherTotal;

    public SeasonBalanceLanes(RootZoneParameterSets sets)
    {
        early = sets.EventTiming == WaterEventTiming.StartOfDay;
        adjust = sets.AdjustDepletionFraction;
        total = Padded(sets.TotalAvailableWaterMm);
        fraction = Padded(sets.DepletionFraction);
        wettedShare = Padded(sets.WettedFraction);
        salt = Padded(sets.SaltStressCoefficient);
        useFactor = Padded(sets.CropCoefficientFactor);
        var start = Padded(sets.StartDepletionMm);
        wettedTotal = [.. total.Zip(wettedShare, (t, share) => t * share)];
        otherTotal = [.. total.Zip(wettedTotal, (t, wetted) => t - wetted)];
        WettedMm = [.. start.Select((s, i) => Math.Min(s * wettedShare[i], wettedTotal[i]))];
        OtherMm = [.. start.Select((s, i) => Math.Min(s * (1 - wettedShare[i]), otherTotal[i]))];
        ActualEtMm = new double[total.Length];
        DeepPercolationMm = new double[total.Length];
    }

    /// <summary>Missing from the wetted part. Longer than the sets: the last ones fill a whole lane. [mm]</summary>
    public double[] WettedMm { get; }

    /// <summary>Missing from the other part. [mm]</summary>
    public double[] OtherMm { get; }

    /// <summary>Since the season started. [mm]</summary>
    public double[] ActualEtMm { get; }

    /// <summary>Since the season started. [mm]</summary>
    public double[] DeepPercolationMm { get; }

    public void Step(BalanceInputs day)
    {
        var hasWater = day.RainMm > 0 || day.IrrigationMm > 0;
        if (hasWater && early)
        {
            Receive(day.RainMm, day.IrrigationMm);
        }

        Draw(day.ReferenceEtMm * day.CropCoefficient);
        if (hasWater && !early)
        {
            Receive(day.RainMm, day.IrrigationMm);
        }
    }

    // A plan runs this for seconds only: optimised from the first call on.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Draw(double cropEtMm)
    {
        for (var i = 0; i < total.Length; i += Width)
        {
            var cropEt = new Vector<double>(cropEtMm) * new Vector<double>(useFactor, i);
            var wetted = new Vector<double>(WettedMm, i);
            var other = new Vector<double>(OtherMm, i);
            var wettedHolds = new Vector<double>(wettedTotal, i);
            var otherHolds = new Vector<double>(otherTotal, i);
            var wettedLeft = wettedHolds - wetted;
            var otherLeft = otherHolds - other;
            var depletionFraction = new Vector<double>(fraction, i);
            if (adjust)
            {
                depletionFraction = Adjusted(depletionFraction, cropEt);
            }

            var unstressed = (Vector<double>.One - depletionFraction) * new Vector<double>(total, i);
            var drawn = Vector.Min(Vector<double>.One, cropEt * new Vector<double>(salt, i) / Vector.Max(wettedLeft + otherLeft, unstressed));
            var fromWetted = drawn * wettedLeft;
            var fromOther = drawn * otherLeft;
            Vector.Min(wettedHolds, wetted + fromWetted).CopyTo(WettedMm, i);
            Vector.Min(otherHolds, other + fromOther).CopyTo(OtherMm, i);
            (new Vector<double>(ActualEtMm, i) + fromWetted + fromOther).CopyTo(ActualEtMm, i);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Receive(double rainMm, double irrigationMm)
    {
        for (var i = 0; i < total.Length; i += Width)
        {
            var share = new Vector<double>(wettedShare, i);
            var rain = new Vector<double>(rainMm);
            var wetted = new Vector<double>(WettedMm, i) - ((rain * share) + new Vector<double>(irrigationMm));
            var other = new Vector<double>(OtherMm, i) - (rain * (Vector<double>.One - share));
            Vector.Max(Vector<double>.Zero, wetted).CopyTo(WettedMm, i);
            Vector.Max(Vector<double>.Zero, other).CopyTo(OtherMm, i);
            var passed = Vector.Max(Vector<double>.Zero, -wetted) + Vector.Max(Vector<double>.Zero, -other);
            (new Vector<double>(DeepPercolationMm, i) + passed).CopyTo(DeepPercolationMm, i);
        }
    }

    private static Vector<double> Adjusted(Vector<double> tableFraction, Vector<double> cropEt) =>
        Vector.Min(new Vector<double>(0.8), Vector.Max(new Vector<double>(0.1), tableFraction + (new Vector<double>(0.04) * (new Vector<double>(5) - cropEt))));

    // The last value again past the end: real numbers, whose results nobody reads.
    private static double[] Padded(ReadOnlySpan<double> values)
    {
        var padded = new double[(values.Length + Width - 1) / Width * Width];
        padded.AsSpan(values.Length).Fill(values[^1]);
        values.CopyTo(padded);
        return padded;
    }
}
