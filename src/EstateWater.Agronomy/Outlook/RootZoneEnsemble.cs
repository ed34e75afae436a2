using System.Numerics;
using EstateWater.Agronomy.Canopy;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Many versions of one block's root zone, stepped together through a season.</summary>
/// <remarks>
/// <para>
/// Two zones share the declared available water: the part the drippers wet and the rest. Rain falls on both, applied
/// water on the first only, and what a full zone cannot hold passes the roots. Demand is Ks · Kc · ET0 (Allen et al.
/// 1998, Eq. 81) with Kc linear in shade (Williams and Ayars 2005), which wanders (<see cref="UseDrift"/>), and Ks falling
/// below a share left that is learned; before any reading it is a third, ours, below the 0.55 of Allen et al. (1998,
/// Table 22). The zones share the demand by their size, their roots and their wetness; drip draws roots to its strip.
/// </para>
/// <para>Depletions never leave 0 to the zone's capacity, so water is conserved by construction.</para>
/// </remarks>
internal sealed class RootZoneEnsemble
{
    private const double ShareLeftWhereUptakeFalls = 1 / 3.0;
    private const double RootsUnderDrippers = 1.5;
    private const double EffectiveRainShare = 0.9;
    private const double LeastShareLeft = 0.005;

    private readonly double[] wetCapacity;
    private readonly double[] dryCapacity;
    private readonly double[] perWetCapacity;
    private readonly double[] perDryCapacity;
    private readonly double[] wetFraction;
    private readonly double[] rooted;
    private readonly double[] waterUse;
    private readonly double[] delivery;
    private readonly double[] perShareWhereUptakeFalls;
    private readonly double[] wetDepletion;
    private readonly double[] dryDepletion;
    private readonly UseDrift drift;
    private int daysLived;

    public RootZoneEnsemble(BlockDeclaration block, double[][] unknowns, int startUnknown)
    {
        Members = unknowns[0].Length;
        wetCapacity = new double[Members];
        dryCapacity = new double[Members];
        perWetCapacity = new double[Members];
        perDryCapacity = new double[Members];
        wetFraction = new double[Members];
        rooted = new double[Members];
        waterUse = new double[Members];
        delivery = new double[Members];
        perShareWhereUptakeFalls = new double[Members];
        wetDepletion = new double[Members];
        dryDepletion = new double[Members];
        WetShareLeft = new double[Members];
        DryShareLeft = new double[Members];
        RootShareLeft = new double[Members];
        drift = startUnknown == Unknowns.StartOfSeason ? UseDrift.Of(unknowns) : UseDrift.None;
        var spread = Unknowns.Spread;
        for (var m = 0; m < Members; m++)
        {
            var capacity = block.TotalAvailableWaterMm * Math.Exp(spread[Unknowns.AvailableWater] * unknowns[Unknowns.AvailableWater][m]);
            var wetted = Math.Clamp(block.WettedFraction * Math.Exp(spread[Unknowns.WettedFraction] * unknowns[Unknowns.WettedFraction][m]), 0.05, 0.95);
            wetFraction[m] = wetted;
            rooted[m] = RootsUnderDrippers * Math.Exp(spread[Unknowns.Roots] * unknowns[Unknowns.Roots][m]);
            wetCapacity[m] = wetted * capacity;
            dryCapacity[m] = (1 - wetted) * capacity;
            perWetCapacity[m] = 1 / wetCapacity[m];
            perDryCapacity[m] = 1 / dryCapacity[m];
            waterUse[m] = CropCoefficient.WilliamsAyarsSlope * Math.Exp(spread[Unknowns.WaterUse] * unknowns[Unknowns.WaterUse][m]);
            perShareWhereUptakeFalls[m] = 1 / Math.Clamp(ShareLeftWhereUptakeFalls * Math.Exp(spread[Unknowns.StressPoint] * unknowns[Unknowns.StressPoint][m]), 0.05, 0.95);
            delivery[m] = block.DeliveredShare * Math.Exp(spread[Unknowns.Delivery] * unknowns[Unknowns.Delivery][m]);

            // A season starts between full and about a third empty: winter rain decides, and the fit corrects it.
            var start = 0.35 / (1 + Math.Exp(1 - (spread[startUnknown] * unknowns[startUnknown][m])));
            wetDepletion[m] = start * wetCapacity[m];
            dryDepletion[m] = start * dryCapacity[m];
        }
    }

    private RootZoneEnsemble(RootZoneEnsemble other)
    {
        Members = other.Members;
        (wetCapacity, dryCapacity, perWetCapacity, perDryCapacity) = (other.wetCapacity, other.dryCapacity, other.perWetCapacity, other.perDryCapacity);
        (wetFraction, rooted, waterUse, delivery, perShareWhereUptakeFalls) = (other.wetFraction, other.rooted, other.waterUse, other.delivery, other.perShareWhereUptakeFalls);
        (drift, daysLived) = (other.drift, other.daysLived);
        wetDepletion = [.. other.wetDepletion];
        dryDepletion = [.. other.dryDepletion];
        WetShareLeft = new double[Members];
        DryShareLeft = new double[Members];
        RootShareLeft = new double[Members];
    }

    public int Members { get; }

    /// <summary>Share of available water left in the wetted zone, as of the last look.</summary>
    public double[] WetShareLeft { get; }

    /// <summary>Share of available water left in the other zone.</summary>
    public double[] DryShareLeft { get; }

    /// <summary>Share of available water left as the vine feels it: the root mean square over its roots, so that the wetter zone counts for more and more water is never felt as less.</summary>
    public double[] RootShareLeft { get; }

    /// <summary>A copy that can be stepped on its own.</summary>
    public RootZoneEnsemble Branch() => new(this);

    /// <summary>Takes over how much water another copy of the same root zone holds, and the day it has reached.</summary>
    public void CopyWater(RootZoneEnsemble other)
    {
        other.wetDepletion.CopyTo(wetDepletion, 0);
        other.dryDepletion.CopyTo(dryDepletion, 0);
        daysLived = other.daysLived;
    }

    /// <summary>Reads how much water is left this morning.</summary>
    public void Look()
    {
        var width = Vector<double>.Count;
        for (var m = 0; m <= Members - width; m += width)
        {
            Look(
                new Vector<double>(wetDepletion, m), new Vector<double>(dryDepletion, m), new Vector<double>(perWetCapacity, m),
                new Vector<double>(perDryCapacity, m), new Vector<double>(wetFraction, m), new Vector<double>(rooted, m), out var wet, out var dry, out var root, out _);
            wet.CopyTo(WetShareLeft, m);
            dry.CopyTo(DryShareLeft, m);
            root.CopyTo(RootShareLeft, m);
        }
    }

    /// <summary>Lives through the first days of a season.</summary>
    public void LiveThrough(SeasonForcing season, int days)
    {
        for (var day = 0; day < days; day++)
        {
            Step(season, day);
        }
    }

    /// <summary>Lives through a day of a season.</summary>
    public void Step(SeasonForcing season, int day) => Step(season.Et0Mm[day], season.RainMm[day], season.AppliedMm[day], season.ShadedFraction[day]);

    /// <summary>Lives through a day with one weather for every member.</summary>
    public void Step(double et0Mm, double rainMm, double appliedMm, double shadedFraction) =>
        Step(new Uniform(et0Mm), new Uniform(rainMm), appliedMm, shadedFraction);

    /// <summary>Lives through a day with each member's own weather.</summary>
    public void Step(double[] et0Mm, double[] rainMm, double appliedMm, double shadedFraction) =>
        Step(new Own(et0Mm), new Own(rainMm), appliedMm, shadedFraction);

    private void Step<TEt0, TRain>(TEt0 et0Mm, TRain rainMm, double appliedMm, double shadedFraction)
        where TEt0 : struct, IDailyValue
        where TRain : struct, IDailyValue
    {
        var width = Vector<double>.Count;
        var zero = Vector<double>.Zero;
        var wandering = drift.On(daysLived++);
        for (var m = 0; m <= Members - width; m += width)
        {
            var wetDepleted = new Vector<double>(wetDepletion, m);
            var dryDepleted = new Vector<double>(dryDepletion, m);
            var wetted = new Vector<double>(wetFraction, m);
            Look(wetDepleted, dryDepleted, new Vector<double>(perWetCapacity, m), new Vector<double>(perDryCapacity, m), wetted, new Vector<double>(rooted, m), out _, out _, out var left, out var wetShareOfUptake);

            var stress = Vector.Min(Vector<double>.One, left * new Vector<double>(perShareWhereUptakeFalls, m));
            var used = new Vector<double>(waterUse, m) * stress * et0Mm.At(m) * shadedFraction;
            if (wandering is var (earlier, later, laterShare))
            {
                used *= (new Vector<double>(earlier, m) * (1 - laterShare)) + (new Vector<double>(later, m) * laterShare);
            }

            var rain = rainMm.At(m) * EffectiveRainShare;
            var applied = new Vector<double>(delivery, m) * appliedMm;
            var wetAfter = wetDepleted - (rain * wetted) - applied + (used * wetShareOfUptake);
            var dryAfter = dryDepleted - (rain * (Vector<double>.One - wetted)) + (used * (Vector<double>.One - wetShareOfUptake));
            Vector.Min(new Vector<double>(wetCapacity, m), Vector.Max(zero, wetAfter)).CopyTo(wetDepletion, m);
            Vector.Min(new Vector<double>(dryCapacity, m), Vector.Max(zero, dryAfter)).CopyTo(dryDepletion, m);
        }
    }

    private static void Look(
        Vector<double> wetDepleted,
        Vector<double> dryDepleted,
        Vector<double> perWetHeld,
        Vector<double> perDryHeld,
        Vector<double> wetted,
        Vector<double> rooted,
        out Vector<double> wetLeft,
        out Vector<double> dryLeft,
        out Vector<double> rootLeft,
        out Vector<double> wetShareOfUptake)
    {
        var least = new Vector<double>(LeastShareLeft);
        wetLeft = Vector.Max(least, Vector<double>.One - (wetDepleted * perWetHeld));
        dryLeft = Vector.Max(least, Vector<double>.One - (dryDepleted * perDryHeld));
        var wetRoots = wetted * rooted;
        var dryRoots = Vector<double>.One - wetted;
        var wetPull = wetRoots * wetLeft;
        var dryPull = dryRoots * dryLeft;
        rootLeft = Vector.SquareRoot(((wetPull * wetLeft) + (dryPull * dryLeft)) / (wetRoots + dryRoots));
        wetShareOfUptake = wetPull / (wetPull + dryPull);
    }

    private interface IDailyValue
    {
        Vector<double> At(int member);
    }

    private readonly struct Uniform(double value) : IDailyValue
    {
        public Vector<double> At(int member) => new(value);
    }

    private readonly struct Own(double[] values) : IDailyValue
    {
        public Vector<double> At(int member) => new(values, member);
    }
}
