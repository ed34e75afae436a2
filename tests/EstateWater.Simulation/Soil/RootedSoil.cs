namespace EstateWater.Simulation.Soil;

/// <summary>What the roots of a block meet: both zones, and how easily each layer gives its water.</summary>
/// <param name="bulb">The strip the drippers wet.</param>
/// <param name="between">The ground between the rows.</param>
public sealed class RootedSoil(SoilZone bulb, SoilZone between)
{
    private const double RootContactMmPerMpa = 60;

    public SoilZone Bulb => bulb;

    public SoilZone Between => between;

    /// <summary>
    /// The conductance of all layers together and the potential they act as. Each layer is a root resistance and a soil
    /// resistance in series; the soil's conductance falls with its own conductivity as it dries.
    /// </summary>
    /// <param name="rootConductance">Of all roots in wet soil. [mm/h/MPa]</param>
    public SoilSupply Supply(double rootConductance)
    {
        double conductance = 0, weighted = 0;
        foreach (var (layer, _, share) in RootedLayers())
        {
            var g = LayerConductance(layer, share, rootConductance);
            conductance += g;
            weighted += g * layer.PotentialMpa;
        }

        return new SoilSupply(weighted / conductance, conductance);
    }

    /// <summary>Takes what the vines drank, split by the pull on each layer; wetter layers give more. Returns what was there to take. [mm]</summary>
    /// <param name="waterMm">Over the block's ground. [mm]</param>
    /// <param name="rootConductance">Of all roots in wet soil. [mm/h/MPa]</param>
    /// <param name="collarMpa">Potential at the base of the trunk. [MPa]</param>
    public double TakeUp(double waterMm, double rootConductance, double collarMpa)
    {
        var pulls = RootedLayers()
            .Select(r => (r.Layer, r.Zone, Pull: LayerConductance(r.Layer, r.Share, rootConductance) * Math.Max(0, r.Layer.PotentialMpa - collarMpa)))
            .ToList();
        var total = pulls.Sum(p => p.Pull);
        var taken = 0.0;
        foreach (var (layer, zone, pull) in pulls.Where(p => p.Pull > 0))
        {
            var from = Math.Min(waterMm * pull / total / zone.AreaShare, 0.2 * layer.WaterMm);
            layer.WaterMm -= from;
            taken += from * zone.AreaShare;
        }

        return taken;
    }

    /// <summary>Lets water creep sideways from the wetter zone to the drier one.</summary>
    public void Exchange(double hours)
    {
        for (var i = 0; i < bulb.Layers.Count; i++)
        {
            var (a, b) = (bulb.Layers[i], between.Layers[i]);
            var conductivity = Math.Min(1, Math.Sqrt(a.ConductivityMmPerH * b.ConductivityMmPerH));
            var pull = Math.Clamp(a.PotentialMpa - b.PotentialMpa, -1, 1);
            var flow = Math.Clamp(1.2 * conductivity * pull * hours * a.ThicknessMm / 300, -0.3, 0.3);
            a.WaterMm -= flow / bulb.AreaShare;
            b.WaterMm += flow / between.AreaShare;
        }
    }

    /// <summary>Water in both zones over the block's ground. [mm]</summary>
    public double WaterMm => Zones().Sum(z => z.AreaShare * z.Layers.Sum(l => l.WaterMm));

    public RootedSoil Clone() => new(bulb.Clone(), between.Clone());

    private SoilZone[] Zones() => [bulb, between];

    private IEnumerable<(SoilLayer Layer, SoilZone Zone, double Share)> RootedLayers() =>
        Zones().SelectMany(zone => zone.Layers.Select(layer => (layer, zone, layer.RootShare)))
            .Where(r => r.Item3 > 0);

    private static double LayerConductance(SoilLayer layer, double share, double rootConductance)
    {
        var root = share * rootConductance;
        var soil = share * RootContactMmPerMpa * 1000 * layer.ConductivityMmPerH;
        return (root * soil / (root + soil)) + (1e-6 * share);
    }
}

/// <summary>What the soil offers the vine.</summary>
/// <param name="PotentialMpa">Weighted by conductance. [MPa]</param>
/// <param name="Conductance">Soil to the base of the trunk. [mm/h/MPa]</param>
public readonly record struct SoilSupply(double PotentialMpa, double Conductance);
