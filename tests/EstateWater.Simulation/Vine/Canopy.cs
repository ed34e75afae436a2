namespace EstateWater.Simulation.Vine;

/// <summary>Shoots and leaves through the season: they grow with warmth, slow and stop as water gets short, and fall in autumn.</summary>
public sealed class Canopy(VineTraits traits)
{
    private const double BaseC = 10;

    public double DegreeDays { get; private set; }

    public double ShootCm { get; private set; }

    /// <summary>Share of shoots whose tips still grow, 0–1.</summary>
    public double GrowingTips { get; private set; } = 1;

    /// <summary>Share of the leaves lost to drought, 0–1.</summary>
    public double LeavesLost { get; private set; }

    public double Stage => GrowthStage.At(DegreeDays * traits.Pace);

    /// <summary>[m²/m² of ground]</summary>
    public double LeafArea =>
        Math.Max(0.02, traits.FullLeafArea * Math.Min(1.1, ShootCm / traits.TrimmedAtCm) * (1 - LeavesLost) * Math.Clamp((47 - Stage) / 5, 0, 1));

    /// <summary>Share of the ground shaded at solar noon, 0–1.</summary>
    public double Shade => Math.Min(0.95, traits.FullShade * (1 - Math.Exp(-1.6 * LeafArea / traits.FullLeafArea)) / (1 - Math.Exp(-1.6)));

    /// <summary>A new season begins at budburst.</summary>
    public void Budburst()
    {
        (DegreeDays, ShootCm, GrowingTips, LeavesLost) = (0.1, 1, 1, 0);
    }

    /// <summary>A day's growth.</summary>
    /// <param name="tMaxC">[°C]</param>
    /// <param name="tMinC">[°C]</param>
    /// <param name="predawnMpa">[MPa]</param>
    /// <param name="leafMpa">At midday. [MPa]</param>
    public void Grow(double tMaxC, double tMinC, double predawnMpa, double leafMpa)
    {
        if (DegreeDays <= 0)
        {
            return;
        }

        var warmth = Math.Max(0, ((Math.Min(tMaxC, 36) + tMinC) / 2) - BaseC);
        DegreeDays += warmth;
        var turgor = Math.Clamp(1 - ((-predawnMpa - 0.22) / 0.45), 0, 1) * Math.Clamp(1 - ((-leafMpa - 0.95) / 0.85), 0, 1);
        ShootCm = Math.Min(traits.TrimmedAtCm * 1.1, ShootCm + (traits.ShootCmPerDegreeDay * warmth * turgor * GrowingTips));
        var ageing = Math.Clamp((Stage - 25) / 900, 0, 0.012);
        GrowingTips *= Math.Clamp(1 - ageing - (0.14 * (1 - turgor)), 0, 1);
        LeavesLost = Math.Min(0.6, LeavesLost + (0.03 * Math.Max(0, -leafMpa - 1.75)));
    }

    public Canopy Clone() => (Canopy)MemberwiseClone();
}
