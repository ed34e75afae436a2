using EstateWater.Data.Model;
using EstateWater.Tests.Web.Sets;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.Week;

public sealed class PlanInputsTests
{
    private static readonly EstateContents Before = SampleEstate.Contents;

    [Fact]
    public void Water_confirmed_ahead_of_the_moment_leaves_the_plan() =>
        Assert.True(PlanInputs.AreSame(Before, Before with { AppliedWaters = [Water(Samples.AsOf.AddHours(14))] }, Samples.AsOf));

    [Fact]
    public void Water_applied_before_the_moment_asks_for_a_new_plan() =>
        Assert.False(PlanInputs.AreSame(Before, Before with { AppliedWaters = [Water(Samples.AsOf.AddHours(-14))] }, Samples.AsOf));

    [Fact]
    public void Rows_that_say_the_same_are_the_same_and_one_other_figure_is_not()
    {
        var block = Before.Blocks[0];
        Assert.True(PlanInputs.AreSame(Before, Before with { Blocks = [block with { }, Before.Blocks[1]] }, Samples.AsOf));
        Assert.False(PlanInputs.AreSame(Before, Before with { Blocks = [block with { RootDepthM = 1.1 }, Before.Blocks[1]] }, Samples.AsOf));
    }

    private static AppliedWater Water(DateTimeOffset startedAt) => new() { ValveCode = "V01", StartedAt = startedAt, Hours = 4 };
}
