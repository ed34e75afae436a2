using EstateWater.Planning;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;

namespace EstateWater.Tests.Planning;

public sealed class SettlingTests
{
    // Every further set that the clock has room for is tried, one by one, against the blocks' own costs: it spares no more than
    // one mean quarter hour, or a tenth of what its hours do on average.
    [Theory]
    [InlineData(6, 60.0)]
    [InlineData(6, 80.0)]
    [InlineData(8, 80.0)]
    [InlineData(4, 60.0)]
    [InlineData(4, 70.0)]
    public void Hours_that_do_not_fit_would_do_little_good_where_there_is_room(int blocks, double maxFlow)
    {
        var request = SmallEstate.Request(blocks, maxFlow);
        var estate = Planner.Fit(request, TestContext.Current.CancellationToken);
        var source = Assert.Single(estate.SourceNights(estate.Needs(request, TestContext.Current.CancellationToken), []));
        var packed = Assert.Single(estate.Packed([source], TestContext.Current.CancellationToken));
        Assert.NotEmpty(packed.StillWanted);
        var search = new NeedSearch(source.Nights, estate.Days, source.SeasonPerMm);
        var tried = 0;
        foreach (var need in packed.StillWanted.Keys)
        {
            var quarters = new int[source.Nights.Count];
            packed.Sets.Where(s => s.Need == need).ToList().ForEach(s => quarters[s.Night] += s.Quarters);
            var cost = search.CostWithWater(need.Courses, quarters);
            for (var night = 0; night < quarters.Length; night++)
            {
                if (quarters[night] > 0)
                {
                    continue;
                }

                for (var length = NeedSearch.ShortestSetQuarters; length <= LongestFree(source, packed, need, night); length++, tried++)
                {
                    var with = quarters.ToArray();
                    with[night] = length;
                    var gain = cost - search.CostWithWater(need.Courses, with);
                    Assert.True(gain <= Math.Max(1, 0.1 * length) * need.SparedPerQuarter, $"{need.Valve.Code} in night {night}: {length} quarter hours would spare {gain / need.SparedPerQuarter:F1} mean quarter hours");
                }
            }
        }

        Assert.True(tried > 0, "no night has room to try");
    }

    // Four valves that cannot all be open at once, and nights enough for all their hours.
    [Theory]
    [InlineData(80.0)]
    [InlineData(90.0)]
    public void Where_other_nights_have_room_for_all_hours_none_are_said_not_to_fit(double maxFlow) =>
        Assert.Empty(Planner.Plan(SmallEstate.Request(4, maxFlow), TestContext.Current.CancellationToken).Unmet);

    private static int LongestFree(SourceNights source, PackedSource packed, ValveNeed need, int night)
    {
        var (longest, run) = (0, 0);
        for (var quarter = 0; quarter < source.Nights[night].Quarters; quarter++)
        {
            var open = packed.Sets.Where(s => s.Night == night && s.StartQuarter <= quarter && quarter < s.StartQuarter + s.Quarters);
            run = open.Sum(s => s.Need.Valve.FlowM3PerH) + need.Valve.FlowM3PerH <= source.Source.MaxFlowM3PerH - 0.01 ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
