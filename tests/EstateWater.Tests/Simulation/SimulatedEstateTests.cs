using EstateWater.Simulation.Estate;

namespace EstateWater.Tests.Simulation;

/// <summary>The simulated estate keeps its books and obeys who waters it.</summary>
public sealed class SimulatedEstateTests
{
    private static readonly IReadOnlyDictionary<string, double> NoWater = new Dictionary<string, double>();

    [Theory]
    [InlineData(7001, true)]
    [InlineData(7002, false)]
    public void Water_that_came_is_water_that_went_or_stayed(ulong seed, bool southern)
    {
        var estate = Dry(seed, southern, 200);
        for (var day = 0; day < 30; day++)
        {
            estate.AdvanceDay(day % 4 == 0 ? estate.Spec.Valves.ToDictionary(v => v.Code, _ => 8.0) : NoWater);
        }

        foreach (var block in estate.Spec.Blocks.Select(b => estate.Block(b.Code)))
        {
            var before = new SimulatedBlock(block.Spec, estate.Spec.Site).Soil.WaterMm;
            var flows = block.Days.Aggregate(default(Flows), (sum, day) => sum + day.Flows);
            Assert.True(flows.DripMm > 20 && flows.TranspirationMm > 20);
            var expected = before + flows.RainMm + flows.DripMm - flows.TranspirationMm - flows.EvaporationMm - flows.DrainageMm;
            Assert.Equal(expected, block.Soil.WaterMm, 1e-6);
        }
    }

    [Fact]
    public void Same_seed_gives_the_same_estate_and_another_seed_another()
    {
        double Tension(ulong seed) => Dry(seed, true, 170).TrueTensionBar("R01", new DateOnly(2024, 12, 10), Measure.Leaf);
        Assert.Equal(Tension(7003), Tension(7003));
        Assert.NotEqual(Tension(7003), Tension(7004));
    }

    [Fact]
    public void Watering_a_dry_block_brings_its_tension_down_and_leaves_the_others()
    {
        var dry = Dry(7005, true, 205);
        var watered = dry.Fork();
        var valve = dry.Spec.Blocks[0].Valve;
        for (var day = 0; day < 4; day++)
        {
            dry.AdvanceDay(NoWater);
            watered.AdvanceDay(new Dictionary<string, double> { [valve] = 10 });
        }

        var last = dry.Today.AddDays(-1);
        double Drop(string block) => dry.TrueTensionBar(block, last, Measure.Leaf) - watered.TrueTensionBar(block, last, Measure.Leaf);
        Assert.True(Drop("R01") > 1.5, $"{Drop("R01"):0.00} bar");
        Assert.Equal(0, Drop("R02"));
    }

    [Fact]
    public void A_set_that_passes_midnight_arrives_whole()
    {
        var estate = Dry(7006, true, 190);
        var block = estate.Spec.Blocks[0];
        estate.AdvanceDay([new ValveOpening(block.Valve, estate.Spec.Site.At(estate.Today, 21), 10)]);
        estate.AdvanceDay(NoWater);
        var put = estate.Block(block.Code).Days.TakeLast(2).Sum(d => d.Flows.DripMm);
        Assert.Equal(10 * block.DeclaredMmPerH * block.Truth.Delivery, put, 1e-9);
    }

    [Fact]
    public void Declared_properties_are_wrong_by_up_to_a_quarter()
    {
        var blocks = RandomEstate.Draw(7007, 24, true, 2024).Blocks;
        var ratios = blocks.Select(b => b.WettedFraction!.Value / b.Truth.WettedShare).ToList();
        Assert.All(ratios, r => Assert.InRange(r, 0.73, 1.27));
        Assert.True(ratios.Max() > 1.1 && ratios.Min() < 0.9);
        Assert.Contains(blocks, b => b.Truth.Delivery < 0.9);
    }

    /// <summary>An estate that lived so many days on rain alone.</summary>
    private static SimulatedEstate Dry(ulong seed, bool southern, int days)
    {
        var estate = new SimulatedEstate(RandomEstate.Draw(seed, 3, southern, 2024), seed);
        for (var day = 0; day < days; day++)
        {
            estate.AdvanceDay(NoWater);
        }

        return estate;
    }
}
