using EstateWater.Simulation.Soil;
using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Vine;

/// <summary>Where the vine's water stands at one moment.</summary>
/// <param name="LeafMpa">A sunlit leaf. [MPa]</param>
/// <param name="StemMpa">The stem, as a bagged leaf shows it. [MPa]</param>
/// <param name="CollarMpa">The base of the trunk. [MPa]</param>
/// <param name="FlowMmPerH">Transpiration of the ground. [mm/h]</param>
public readonly record struct VineWater(double LeafMpa, double StemMpa, double CollarMpa, double FlowMmPerH);

/// <summary>
/// Water moving from soil to leaf as current through resistances (van den Honert 1948); the stomata close with dry air
/// (Lohammar form) and with low leaf potential (Tuzet, Perrier and Leuning 2003 in shape), so flow and potential are solved together.
/// </summary>
public static class LeafHydraulics
{
    private const double MmPerHourPerMol = 0.018 * 3600;
    private const double AirPressureKPa = 99;
    private const double NightConductance = 0.012;
    private const double CanopyShare = 0.78;

    /// <summary>Finds the leaf potential at which what the stomata let out is what soil and stem deliver.</summary>
    public static VineWater Solve(SoilSupply soil, Air air, double leafArea, VineTraits traits)
    {
        var (low, high) = (-5.0, soil.PotentialMpa);
        for (var i = 0; i < 32; i++)
        {
            var middle = (low + high) / 2;
            if (Water(middle, soil, air, leafArea, traits).LeafMpa > middle)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return Water((low + high) / 2, soil, air, leafArea, traits);
    }

    private static VineWater Water(double leafMpa, SoilSupply soil, Air air, double leafArea, VineTraits traits)
    {
        var throughLeaf = Conductance(leafMpa, air, traits) * air.VpdKPa / AirPressureKPa * MmPerHourPerMol;
        var flow = throughLeaf * leafArea * CanopyShare;
        var collar = soil.PotentialMpa - (flow / soil.Conductance);
        var stem = collar - (flow / traits.StemConductance);
        return new VineWater(stem - (throughLeaf * traits.LeafResistance), stem, collar, flow);
    }

    private static double Conductance(double leafMpa, Air air, VineTraits traits)
    {
        var light = 1 - Math.Exp(-air.RadiationWPerM2 / 220);
        var dryAir = 1 / (1 + (air.VpdKPa / traits.HalfClosedVpdKPa));
        var closing = 1 / (1 + Math.Pow(leafMpa / traits.HalfClosedMpa, traits.Sharpness));
        return NightConductance + (traits.OpenConductance * light * dryAir * closing);
    }
}
