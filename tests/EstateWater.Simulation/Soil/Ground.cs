using EstateWater.Simulation.Estate;

namespace EstateWater.Simulation.Soil;

/// <summary>Builds the two zones of a block's ground, full to field capacity.</summary>
public static class Ground
{
    private static readonly double[] TopsMm = [0, 200, 450, 800, 1200];

    /// <summary>Layers get thicker with depth; roots are densest at 20–45 cm and thin out below.</summary>
    public static RootedSoil Build(BlockTruth truth)
    {
        var soil = new RootedSoil(
            Zone(truth, truth.WettedShare, truth.BulbRootShare),
            Zone(truth, 1 - truth.WettedShare, 1 - truth.BulbRootShare));
        soil.Bulb.Settle(-0.012);
        soil.Between.Settle(-0.012);
        return soil;
    }

    private static SoilZone Zone(BlockTruth truth, double areaShare, double rootShare)
    {
        var bottom = truth.RootDepthM * 1000;
        var tops = TopsMm.Where(t => t < bottom - 80).ToList();
        var spans = tops.Select((top, i) => (Top: top, Thickness: (i + 1 < tops.Count ? tops[i + 1] : bottom) - top)).ToList();
        var weights = spans.Select(s => s.Thickness * RootDensity(s.Top + (s.Thickness / 2), bottom)).ToList();
        return new SoilZone(areaShare, [.. spans.Select((s, i) => new SoilLayer(
            s.Top < 450 ? truth.Topsoil : truth.Subsoil,
            s.Top,
            s.Thickness,
            Math.Min(0.5, truth.StoneShare * (s.Top < 450 ? 0.8 : 1.3)),
            rootShare * weights[i] / weights.Sum()))]);
    }

    private static double RootDensity(double depthMm, double bottomMm) =>
        (depthMm < 150 ? 0.5 : 1) * Math.Exp(-1.1 * depthMm / bottomMm);
}
