using EstateWater.Planning;
using EstateWater.Web.Features.Owner;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Owner;

public sealed class OwnerWordsTests
{
    [Fact]
    public void Says_which_sources_run_short_and_by_how_much() =>
        Assert.Equal(
            "Bore and Hill dam run short before harvest: 18\u202F000 m³ and 20\u202F000 m³ are left, the blocks want 18\u202F553 m³ and 20\u202F901 m³.",
            OwnerWords.ToHarvest([Use("Bore", 18_553, isShort: true), Use("Hill dam", 20_901, 10_000, isShort: true), Use("Weir", 9_000)], UnitChoice.Metric));

    [Fact]
    public void One_source_runs_short_alone() =>
        Assert.Equal(
            "Bore runs short before harvest: 18\u202F000 m³ is left, the blocks want 18\u202F553 m³.",
            OwnerWords.ToHarvest([Use("Bore", 18_553, isShort: true), Use("Weir", 9_000)], UnitChoice.Metric));

    [Fact]
    public void Three_are_listed() =>
        Assert.StartsWith(
            "Bore, Weir and Dam run short",
            OwnerWords.ToHarvest([Use("Bore", 19_000, isShort: true), Use("Weir", 19_000, isShort: true), Use("Dam", 19_000, isShort: true)], UnitChoice.Metric),
            StringComparison.Ordinal);

    [Fact]
    public void Enough_is_said_too_but_not_where_no_season_is_known()
    {
        Assert.Equal("The water left is expected to last to harvest.", OwnerWords.ToHarvest([Use("Weir", 9_000)], UnitChoice.Metric));
        Assert.Null(OwnerWords.ToHarvest([new SourceUse("mains", 100, 0, null, null)], UnitChoice.Metric));
    }

    // Of 30 000 m³.
    private static SourceUse Use(string source, double wantedM3, double usedM3 = 12_000, bool isShort = false) =>
        new(source, usedM3, 0, 30_000, new SeasonWater(wantedM3, wantedM3, 0, 0, "") { IsShort = isShort });
}
