namespace EstateWater.Tests.Laws;

public sealed class LayoutLaws
{
    [Fact]
    public void Planning_and_data_do_not_know_each_other()
    {
        Assert.DoesNotContain(typeof(EstateWater.Planning.Plan).Assembly.GetReferencedAssemblies(), a => a.Name == "EstateWater.Data");
        Assert.DoesNotContain(typeof(EstateWater.Data.Model.Block).Assembly.GetReferencedAssemblies(), a => a.Name == "EstateWater.Planning");
    }

    [Fact]
    public void Agronomy_knows_none_of_our_other_parts() =>
        Assert.DoesNotContain(
            typeof(EstateWater.Agronomy.Weather.DailyWeather).Assembly.GetReferencedAssemblies(),
            a => a.Name!.StartsWith("EstateWater", StringComparison.Ordinal));
}
