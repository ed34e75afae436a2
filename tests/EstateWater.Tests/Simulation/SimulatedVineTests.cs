using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Soil;
using EstateWater.Simulation.Vine;
using EstateWater.Simulation.Weather;

namespace EstateWater.Tests.Simulation;

/// <summary>The simulated vine behaves as vines are known to.</summary>
public sealed class SimulatedVineTests
{
    private static readonly VineTraits Vine = new();
    private static readonly SoilSupply WetSoil = new(-0.04, 1.15);

    [Theory]
    [InlineData(2, -0.37)] // Williams and Baeza 2007, as quoted by Williams 2019: fully irrigated stem at 2 and 5 kPa.
    [InlineData(5, -0.57)]
    public void Stem_of_a_well_watered_vine_stands_where_it_was_measured(double vpdKPa, double published)
    {
        var stem = LeafHydraulics.Solve(WetSoil, new Air(32, vpdKPa, 900), 1.1, Vine).StemMpa;
        Assert.Equal(published, stem, 0.08); // the spread between stem readings within a block, 0.05–0.10 MPa
    }

    [Fact]
    public void Potential_falls_from_soil_to_stem_to_leaf()
    {
        var water = LeafHydraulics.Solve(WetSoil, new Air(32, 3, 900), 1.1, Vine);
        Assert.True(WetSoil.PotentialMpa > water.CollarMpa && water.CollarMpa > water.StemMpa && water.StemMpa > water.LeafMpa);
    }

    [Fact]
    public void Stomata_close_as_the_soil_dries_so_that_leaf_falls_less_than_soil()
    {
        var air = new Air(36, 4, 900);
        var moist = LeafHydraulics.Solve(new SoilSupply(-0.3, 1.2), air, 1.1, Vine);
        var dry = LeafHydraulics.Solve(new SoilSupply(-0.9, 0.8), air, 1.1, Vine);
        Assert.True(dry.LeafMpa < moist.LeafMpa);
        Assert.True(moist.LeafMpa - dry.LeafMpa < 0.6);
        Assert.True(dry.FlowMmPerH < 0.8 * moist.FlowMmPerH);
    }

    [Fact]
    public void Soil_gives_water_less_easily_as_it_dries_and_roots_drink_where_it_is_wetter()
    {
        var soil = Ground.Build(new BlockTruth { Topsoil = Texture.Loam, Subsoil = Texture.Loam, Vine = Vine });
        var wet = soil.Supply(1.7);
        soil.Between.Settle(-0.9);
        var half = soil.Supply(1.7);
        Assert.True(half.Conductance < wet.Conductance);
        Assert.True(half.PotentialMpa > -0.45, "the wet zone should weigh more than the dry one");
        var (bulb, between) = (soil.Bulb.Layers.Sum(l => l.WaterMm), soil.Between.Layers.Sum(l => l.WaterMm));
        Assert.Equal(2, soil.TakeUp(2, 1.7, -0.8), 1e-9);
        Assert.Equal(between, soil.Between.Layers.Sum(l => l.WaterMm), 1e-9);
        Assert.Equal(2, (bulb - soil.Bulb.Layers.Sum(l => l.WaterMm)) * soil.Bulb.AreaShare, 1e-9);
    }
}
