namespace EstateWater.Simulation.Soil;

/// <summary>
/// A soil texture's retention and conductivity curves in the form of Campbell (1974), with the parameters of Clapp and
/// Hornberger (1978, Table 2): potential = air entry · (θ/θs)^-b, conductivity = saturated · (θ/θs)^(2b+3).
/// </summary>
/// <param name="Name">As soil surveyors say it.</param>
/// <param name="B">Exponent.</param>
/// <param name="AirEntryCm">Tension at air entry. [cm of water]</param>
/// <param name="SaturatedCmPerMin">Saturated conductivity. [cm/min]</param>
/// <param name="SaturatedTheta">Water content at saturation. [m³/m³]</param>
public sealed record Texture(string Name, double B, double AirEntryCm, double SaturatedCmPerMin, double SaturatedTheta)
{
    private const double MpaPerCm = 9.81e-5;

    public static readonly Texture LoamySand = new("loamy sand", 4.38, 9.0, 0.938, 0.410);
    public static readonly Texture SandyLoam = new("sandy loam", 4.90, 21.8, 0.208, 0.435);
    public static readonly Texture Loam = new("loam", 5.39, 47.8, 0.0417, 0.451);
    public static readonly Texture SiltLoam = new("silt loam", 5.30, 78.6, 0.0432, 0.485);
    public static readonly Texture SandyClayLoam = new("sandy clay loam", 7.12, 29.9, 0.0378, 0.420);
    public static readonly Texture ClayLoam = new("clay loam", 8.52, 63.0, 0.0147, 0.476);

    /// <summary>Water potential at a water content. [MPa, negative]</summary>
    public double PotentialMpa(double theta) =>
        -AirEntryCm * MpaPerCm * Math.Pow(Math.Min(1, Math.Max(theta, 0.01) / SaturatedTheta), -B);

    /// <summary>Water content at a potential. [m³/m³]</summary>
    public double ThetaAt(double potentialMpa) =>
        SaturatedTheta * Math.Min(1, Math.Pow(-potentialMpa / (AirEntryCm * MpaPerCm), -1 / B));

    /// <summary>Hydraulic conductivity at a water content. [mm/h]</summary>
    public double ConductivityMmPerH(double theta) =>
        SaturatedCmPerMin * 600 * Math.Pow(Math.Min(1, theta / SaturatedTheta), (2 * B) + 3);

    /// <summary>Water held between -0.02 and -1.5 MPa. [mm/m]</summary>
    public double AvailableMmPerM => 1000 * (ThetaAt(-0.02) - ThetaAt(-1.5));
}
