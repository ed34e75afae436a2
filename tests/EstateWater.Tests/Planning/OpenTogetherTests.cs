using CsCheck;
using EstateWater.Planning.Packing;

namespace EstateWater.Tests.Planning;

public sealed class OpenTogetherTests
{
    // Two of three flows of 40 under 100 can be open, never three: 30 quarter hours each need 45, though 36 would hold the water.
    [Fact]
    public void Three_valves_of_which_two_fit_need_half_as_long_again_as_one()
    {
        var weights = new OpenTogether([40, 40, 40], 100).Weights([30, 30, 30]);
        Assert.Equal(45, weights.Sum(w => 30 * w), 6);
    }

    [Fact]
    public void A_valve_that_needs_the_pump_alone_weighs_one()
    {
        var weights = new OpenTogether([60, 60, 120], 100).Weights([8, 8, 8]);
        Assert.Equal(1, weights[0], 6);
        Assert.Equal(1, weights[1], 6);
        Assert.Equal(0, weights[2], 6);
    }

    // Against every set of valves, one by one: no weights allow more than the pump does, and they are as heavy as its flow says at least.
    [Fact]
    public void No_valves_that_fit_together_weigh_more_than_one_and_water_over_flow_is_never_beaten()
    {
        Gen.Select(Gen.Long[5, 70].Array[2, 9], Gen.Int[0, 60].Array[9]).Sample((flows, quarters) =>
        {
            const long most = 100;
            var wanted = quarters.Take(flows.Length).ToArray();
            var weights = new OpenTogether(flows, most).Weights(wanted);
            for (var set = 0; set < 1 << flows.Length; set++)
            {
                var open = Enumerable.Range(0, flows.Length).Where(v => (set & (1 << v)) != 0).ToList();
                if (open.Sum(v => flows[v]) <= most && open.Sum(v => weights[v]) > 1 + 1e-5)
                {
                    return false;
                }
            }

            var byWater = wanted.Zip(flows, (q, f) => q * f).Sum() / (double)most;
            return wanted.Zip(weights, (q, w) => q * w).Sum() >= byWater - (0.001 * flows.Length) - 1e-6;
        }, iter: 200);
    }

    [Fact]
    public void The_heaviest_valves_are_those_that_trying_all_finds()
    {
        Gen.Select(Gen.Long[5, 70].Array[1, 10], Gen.Double[0, 1].Array[10]).Sample((flows, weights) =>
        {
            const long most = 120;
            var best = Enumerable.Range(0, 1 << flows.Length)
                .Select(set => Enumerable.Range(0, flows.Length).Where(v => (set & (1 << v)) != 0).ToList())
                .Where(open => open.Sum(v => flows[v]) <= most)
                .Max(open => open.Sum(v => weights[v]));
            var (valves, weight) = new HeaviestTogether(flows, most, weights).Find();
            return Math.Abs(weight - best) < 1e-9 && Math.Abs(valves.Sum(v => weights[v]) - best) < 1e-9 && valves.Sum(v => flows[v]) <= most;
        }, iter: 300);
    }
}
