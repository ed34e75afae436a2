namespace EstateWater.Agronomy.Outlook;

/// <summary>The coming days as each member may meet them.</summary>
/// <param name="FirstDay">Today.</param>
/// <param name="Et0Mm">By day, then member. [mm/d]</param>
/// <param name="VpdKpa">By day, then member; near solar noon. [kPa]</param>
/// <param name="LightShare">By day, then member; 0–1 (<see cref="Weather.MiddayLight"/>).</param>
/// <param name="RainMm">By day, then member. [mm]</param>
public sealed record WeatherAhead(DateOnly FirstDay, double[][] Et0Mm, double[][] VpdKpa, double[][] LightShare, double[][] RainMm)
{
    /// <summary>Number of days.</summary>
    public int Days => Et0Mm.Length;

    /// <summary>How many members every outlook carries.</summary>
    public static int Members => BlockFit.Members;
}
