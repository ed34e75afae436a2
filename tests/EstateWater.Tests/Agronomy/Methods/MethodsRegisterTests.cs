using System.Reflection;
using EstateWater.Agronomy.Methods;

namespace EstateWater.Tests.Methods;

public sealed class MethodsRegisterTests
{
    // Areas in which every class of formulas says whose they are.
    private static readonly string[] Annotated = ["Sun", "Weather", "Phenology", "WaterStatus", "Soil", "Drip", "Canopy", "Statistics", "Units"];

    [Fact]
    public void Every_class_of_formulas_names_its_method()
    {
        var bare = typeof(MethodsRegister).Assembly.GetExportedTypes()
            .Where(type => type.IsAbstract && type.IsSealed && Annotated.Any(area => type.Namespace == $"EstateWater.Agronomy.{area}"))
            .Where(type => !type.GetCustomAttributes<MethodAttribute>(inherit: false).Any()
                && !type.GetMethods().Any(method => method.GetCustomAttributes<MethodAttribute>(inherit: false).Any()))
            .Select(type => type.FullName);

        Assert.Empty(bare);
    }

    [Fact]
    public void Every_entry_is_filled_in()
    {
        Assert.NotEmpty(MethodsRegister.All());
        Assert.All(MethodsRegister.All(), method =>
        {
            Assert.False(string.IsNullOrWhiteSpace(method.Name));
            Assert.True(method.Source.Length > 10, $"{method.Code}: the source is too short to be found.");
            Assert.True(method.Check.Length > 10, $"{method.Code}: the check says too little.");
        });
    }

    [Fact]
    public void Every_source_has_a_year_or_says_that_nothing_is_published() =>
        Assert.All(MethodsRegister.All().Where(m => Annotated.Contains(m.Area)), method => Assert.Matches("(19|20)[0-9]{2}|no published source", method.Source));

    [Fact]
    public void Lists_by_area_then_name_with_the_code_that_carries_it_out()
    {
        var all = MethodsRegister.All();

        Assert.Equal(all.OrderBy(m => m.Area, StringComparer.Ordinal).ThenBy(m => m.Name, StringComparer.Ordinal), all);
        var penman = Assert.Single(all, m => m.Code == "PenmanMonteith");
        Assert.Equal(("Weather", "FAO-56 Penman–Monteith"), (penman.Area, penman.Name));
        Assert.Contains("Eq. 6", penman.Source, StringComparison.Ordinal);
        // A class may carry out more than one.
        Assert.Equal(2, all.Count(m => m.Code == "DegreeDays"));
    }
}
