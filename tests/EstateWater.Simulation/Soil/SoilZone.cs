namespace EstateWater.Simulation.Soil;

/// <summary>A part of a block's ground with its own water: the strip the drippers wet, or the ground between the rows.</summary>
public sealed class SoilZone(double areaShare, IReadOnlyList<SoilLayer> layers)
{
    private const double FieldPotentialMpa = -0.012;
    private const double AirDryMpa = -15;

    /// <summary>Share of the block's ground, 0–1.</summary>
    public double AreaShare => areaShare;

    /// <summary>From the top down.</summary>
    public IReadOnlyList<SoilLayer> Layers => layers;

    /// <summary>Brings every layer to one potential.</summary>
    public void Settle(double potentialMpa)
    {
        foreach (var layer in layers)
        {
            layer.WaterMm = layer.WaterAt(potentialMpa);
        }
    }

    /// <summary>Puts water on the surface; what a layer cannot hold goes on down. Returns what leaves at the bottom. [mm]</summary>
    public double Infiltrate(double waterMm)
    {
        foreach (var layer in layers)
        {
            var taken = Math.Min(waterMm, (0.97 * layer.SaturatedMm) - layer.WaterMm);
            layer.WaterMm += Math.Max(0, taken);
            waterMm -= Math.Max(0, taken);
        }

        return waterMm;
    }

    /// <summary>Lets water above field capacity move down, at the conductivity the layer has. Returns what leaves at the bottom. [mm]</summary>
    public double Drain(double hours)
    {
        var arriving = 0.0;
        foreach (var layer in layers)
        {
            layer.WaterMm += arriving;
            var free = Math.Max(0, layer.WaterMm - layer.WaterAt(FieldPotentialMpa));
            var leaving = Math.Min(layer.ConductivityMmPerH * hours, 0.5 * free);
            leaving += Math.Max(0, layer.WaterMm - leaving - layer.SaturatedMm);
            layer.WaterMm -= leaving;
            arriving = leaving;
        }

        return arriving;
    }

    /// <summary>Takes water from the surface layer by evaporation: freely while wet, slower as it dries. Returns what went. [mm]</summary>
    /// <param name="demandMm">What the air would take from a wet surface. [mm]</param>
    public double Evaporate(double demandMm)
    {
        var top = layers[0];
        var dry = top.WaterAt(AirDryMpa);
        var wetness = Math.Clamp((top.WaterMm - dry) / (top.WaterAt(FieldPotentialMpa) - dry), 0, 1);
        var gone = Math.Max(0, Math.Min(demandMm * wetness * wetness * wetness, top.WaterMm - dry));
        top.WaterMm -= gone;
        return gone;
    }

    public SoilZone Clone() => new(areaShare, [.. layers.Select(l => l.Clone())]);
}
