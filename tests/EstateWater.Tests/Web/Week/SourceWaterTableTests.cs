using Bunit;
using EstateWater.Planning;
using EstateWater.Web.Features.Week;

namespace EstateWater.Tests.Web.Week;

public sealed class SourceWaterTableTests : BunitContext
{
    [Fact]
    public void A_source_with_an_allocation_says_how_its_season_is_expected_to_go()
    {
        var season = new SeasonWater(15_900, 12_400, 9_800, 0.1, "Left 12,400 m³, so 9,800 m³ are kept for ripening.");
        var table = Render<SourceWaterTable>(p => p.Add(t => t.Water, [new SourceWater("bore", 100, 12_300) { Season = season }, new SourceWater("mains", 50, null)]));
        Assert.Equal("bore. Left 12,400 m³, so 9,800 m³ are kept for ripening.", Assert.Single(table.FindAll("p.season-water")).TextContent);
    }
}
