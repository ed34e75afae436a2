using EstateWater.Web.Features.Compare;

namespace EstateWater.Tests.Web.Compare;

public sealed class BlockChoiceTests
{
    private static readonly HashSet<string> Codes = [.. Enumerable.Range(1, 9).Select(n => $"B{n}")];

    [Fact]
    public void Commas_and_repeated_names_are_one_choice_in_the_order_asked_for()
    {
        var choice = BlockChoice.Parse(["B3, B1", "B3", null, ""], Codes);
        Assert.Equal(["B3", "B1"], choice.Known);
        Assert.Equal((0, 0), (choice.Unknown.Count, choice.Left));
    }

    [Fact]
    public void What_the_estate_has_not_is_named_and_what_does_not_fit_is_counted()
    {
        var choice = BlockChoice.Parse(["B1,B2,B3,B4,B5,B6,B7,B8,<x>"], Codes);
        Assert.Equal(["<x>"], choice.Unknown);
        Assert.Equal((BlockChoice.Most, 2), (choice.Known.Count, choice.Left));
    }

    [Fact]
    public void The_address_leads_back_to_the_choice() => Assert.Equal("/compare?blocks=A%201,B2", BlockChoice.Href(["A 1", "B2"]));
}
