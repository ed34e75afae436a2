namespace EstateWater.Simulation.Soil;

/// <summary>A layer of one zone: its water, and how hard it holds it. Depths of water are over the zone's own area.</summary>
public sealed class SoilLayer(Texture texture, double topMm, double thicknessMm, double stoneShare, double rootShare)
{
    private readonly double _fineEarthMm = thicknessMm * (1 - stoneShare);

    public double TopMm => topMm;

    public double ThicknessMm => thicknessMm;

    public double RootShare => rootShare;

    public double WaterMm { get; set; }

    /// <summary>Water content of the fine earth. [m³/m³]</summary>
    public double Theta => WaterMm / _fineEarthMm;

    /// <summary>Water content of the whole layer, as a probe sees it. [m³/m³]</summary>
    public double BulkTheta => WaterMm / thicknessMm;

    public double PotentialMpa => texture.PotentialMpa(Theta);

    public double ConductivityMmPerH => texture.ConductivityMmPerH(Theta);

    /// <summary>Water at a potential. [mm]</summary>
    public double WaterAt(double potentialMpa) => texture.ThetaAt(potentialMpa) * _fineEarthMm;

    public double SaturatedMm => texture.SaturatedTheta * _fineEarthMm;

    public SoilLayer Clone() => new(texture, topMm, thicknessMm, stoneShare, rootShare) { WaterMm = WaterMm };
}
