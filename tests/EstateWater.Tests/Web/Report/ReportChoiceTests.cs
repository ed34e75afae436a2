using EstateWater.Web.Features.Estate;
using EstateWater.Web.Features.Report;
using static EstateWater.Tests.Web.SmallEstate;

namespace EstateWater.Tests.Web.Report;

public sealed class ReportChoiceTests
{
    private static readonly HashSet<string> Codes = ["B1", "B2", "B3"];

    [Fact]
    public void An_address_without_words_tells_every_block_on_A4()
    {
        var choice = ReportChoice.Parse(null, null, null, Codes);
        Assert.Equal((ReportScope.All, "a4"), (choice.Scope, choice.Paper.Key));
        Assert.Equal(["B1", "B2", "B3"], Told(choice));
    }

    [Theory]
    [InlineData("all", "B2", "B1 B2 B3")]
    [InlineData("watered", "B2", "B1 B3")]
    [InlineData("ticked", "B3,B2", "B2 B3")]
    [InlineData(null, "B3", "B3")]
    [InlineData("7", "B3", "B3")]
    [InlineData("nonsense", null, "B1 B2 B3")]
    public void The_scope_decides_and_ticks_alone_mean_ticked(string? scope, string? blocks, string told) =>
        Assert.Equal(told.Split(' '), Told(ReportChoice.Parse(scope, [blocks], "letter", Codes)));

    [Fact]
    public void Nothing_ticked_is_said_and_tells_every_block()
    {
        var choice = ReportChoice.Parse("ticked", [], "foolscap", Codes);
        Assert.True(choice.IsNothingTicked);
        Assert.Equal("a4", choice.Paper.Key);
        Assert.Equal(3, Told(choice).Count());
    }

    [Fact]
    public void Codes_that_the_estate_has_not_are_named() => Assert.Equal(["X9"], ReportChoice.Parse(null, ["B1", "X9"], null, Codes).Unknown);

    // B1 gets hours; B3 wants some that do not fit.
    private static IEnumerable<string> Told(ReportChoice choice)
    {
        var plan = PlanOf(BlockPlanOf("B1", 1, hours: 2), BlockPlanOf("B2", 2), BlockPlanOf("B3", 3)) with { Unmet = [new("B3", 4, "no hours left.")] };
        var rows = BlockRow.From(Snapshot(plan));
        return choice.Of(rows, Decision.From(rows, plan)).Select(row => row.Block.Code);
    }
}
