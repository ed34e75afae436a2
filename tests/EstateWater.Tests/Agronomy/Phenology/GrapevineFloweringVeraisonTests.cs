using EstateWater.Agronomy.Phenology;

namespace EstateWater.Tests.Phenology;

public sealed class GrapevineFloweringVeraisonTests
{
    // Parker et al. (2013), as several public sources quote them.
    [Theory]
    [InlineData("Chardonnay", 1217, 2547)]
    [InlineData("pinot NOIR", 1219, 2511)]
    public void Requirements_known_from_several_sources(string variety, double flowering, double veraison)
    {
        var needs = VarietyHeatNeeds.Of(variety);

        Assert.Equal((flowering, veraison, SourceAgreement.Several), (needs.FloweringCd, needs.VeraisonCd, needs.Agreement));
    }

    [Fact]
    public void A_value_that_sources_dispute_says_so() =>
        Assert.Equal(SourceAgreement.Disagree, VarietyHeatNeeds.Of("Sauvignon Blanc").Agreement);

    [Fact]
    public void Accents_do_not_matter_and_an_unlisted_variety_gets_the_middle()
    {
        Assert.Equal(1227, VarietyHeatNeeds.Of("aligote").FloweringCd);
        Assert.Same(VarietyHeatNeeds.AnyVariety, VarietyHeatNeeds.Of("Field blend"));
        Assert.Same(VarietyHeatNeeds.AnyVariety, VarietyHeatNeeds.Of(null));
        Assert.Equal(SourceAgreement.Fallback, VarietyHeatNeeds.AnyVariety.Agreement);
    }

    [Fact]
    public void An_estates_own_list_stands_instead_of_the_defaults()
    {
        VarietyHeatNeeds[] own = [VarietyHeatNeeds.Of("Chardonnay") with { FloweringCd = 1250, Source = "own blocks, ten years" }];

        Assert.Equal(1250, VarietyHeatNeeds.Of("Chardonnay", own).FloweringCd);
        Assert.Same(VarietyHeatNeeds.AnyVariety, VarietyHeatNeeds.Of("Merlot", own));
    }

    // 61 days at 20 °C are 1220: the 61st day from 1 March is 30 April, from 29 August 28 October.
    [Theory]
    [InlineData(45, 2025, "2025-03-01", "2025-04-30")]
    [InlineData(45, 2024, "2024-03-01", "2024-04-30")]
    [InlineData(-34, 2025, "2024-08-29", "2024-10-28")]
    public void Sums_from_the_start_of_its_season(double latitude, int year, string start, string flowering)
    {
        var from = DateOnly.ParseExact(start, "yyyy-MM-dd");
        var means = Steady(from.AddDays(-30), 200, 20);

        var reached = GrapevineFloweringVeraison.Reached(means, GrapevineFloweringVeraison.StartOfSum(year, latitude), 1217);

        Assert.Equal(from, GrapevineFloweringVeraison.StartOfSum(year, latitude));
        Assert.Equal(new ThermalEvent(DateOnly.ParseExact(flowering, "yyyy-MM-dd"), 1220), reached);
    }

    [Fact]
    public void Frost_takes_nothing_away()
    {
        var start = new DateOnly(2025, 3, 1);
        var means = Steady(start, 10, 20);
        means[start.AddDays(3)] = -8;

        Assert.Equal(new ThermalEvent(start.AddDays(5), 100), GrapevineFloweringVeraison.Reached(means, start, 100));
    }

    [Fact]
    public void Gives_no_date_across_a_gap_or_beyond_the_record()
    {
        var start = new DateOnly(2025, 3, 1);
        var means = Steady(start, 100, 20);

        Assert.Null(GrapevineFloweringVeraison.Reached(means, start, 2001));
        means.Remove(start.AddDays(5));
        Assert.Null(GrapevineFloweringVeraison.Reached(means, start, 200));
    }

    [Fact]
    public void Wrong_values_are_refused_by_name()
    {
        Assert.Equal("FloweringCd", Assert.Throws<ArgumentOutOfRangeException>(
            () => new VarietyHeatNeeds("x", double.NaN, 2500, SourceAgreement.One, "x")).ParamName);
        Assert.Equal("VeraisonCd", Assert.Throws<ArgumentOutOfRangeException>(
            () => VarietyHeatNeeds.Of("Merlot") with { VeraisonCd = 100 }).ParamName);
        Assert.Equal("requirementCd", Assert.Throws<ArgumentOutOfRangeException>(
            () => GrapevineFloweringVeraison.Reached(Steady(default, 1, 20), default, 0)).ParamName);
    }

    private static Dictionary<DateOnly, double> Steady(DateOnly from, int days, double meanC) =>
        Enumerable.Range(0, days).ToDictionary(i => from.AddDays(i), _ => meanC);
}
