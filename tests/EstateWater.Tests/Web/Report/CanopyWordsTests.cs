using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Report;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Report;

public sealed class CanopyWordsTests
{
    private static readonly Block Block = StoredEstate.Contents.Blocks[0] with { TargetShootLengthCm = 120 };

    private static readonly CanopyVisit Visit = new() { BlockCode = Block.Code, Date = SmallEstate.Today, ShootLengthCm = 105, GrowingTipsPct = 40, ShadedFraction = 0.31, VisualStress = 1 };

    // 105 and 120 cm are 41.3 and 47.2 inches of 2.54 cm.
    [Fact]
    public void A_visit_is_told_in_the_readers_unit_of_length()
    {
        const string rest = "tips still growing 40 %; ground shaded at noon 31 %; stress seen: tips slowing (1 of 3).";
        Assert.Equal("Shoots 105 cm, 120 cm wanted at ripening; " + rest, CanopyWords.Of(Visit, Block, UnitChoice.Metric));
        Assert.Equal("Shoots 41 in, 47 in wanted at ripening; " + rest, CanopyWords.Of(Visit, Block, UnitChoice.Us));
    }

    [Fact]
    public void A_visit_that_measured_nothing_says_so() =>
        Assert.Equal("Nothing measured.", CanopyWords.Of(new CanopyVisit { BlockCode = Block.Code, Date = SmallEstate.Today }, Block, UnitChoice.Metric));
}
