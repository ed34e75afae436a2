using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Tests.Agronomy.WaterStatus;

// Nothing published prints vines read again week by week: sets are drawn from known components and must give them again.
public sealed class VineSpreadTests
{
    private const int Blocks = 200;
    private const double LeavesMpa = 0.1;

    // Tolerance: a fifth of the larger component, above three standard errors of 200 blocks of twelve vines.
    [Theory]
    [InlineData(0.08, 0.05)]
    [InlineData(0.0, 0.08)]
    [InlineData(0.08, 0.0)]
    public void Finds_again_what_the_vines_were_drawn_with(double groupMpa, double vineMpa)
    {
        var found = VineSpread.Of(Estate(groupMpa, vineMpa, sets: 8));

        Assert.Equal(groupMpa, found.GroupMpa, 0.02);
        Assert.Equal(vineMpa, found.VineMpa, 0.02);
    }

    // Each week other vines: what one week's leaves share with the next is nothing of the vines'.
    [Fact]
    public void Vines_that_are_never_read_again_tell_nothing()
    {
        var estate = Estate(0.2, 0.2, sets: 8);
        IReadOnlyList<IReadOnlyList<IReadOnlyList<LeafFact>>> others =
            [.. estate.Select(sets => sets.Select((leaves, week) => leaves.Select(l => l with { Vine = $"{week} {l.Vine}" }).ToList()).ToList())];

        Assert.Equal(VineSpread.Usual, VineSpread.Of(others));
    }

    [Fact]
    public void Two_weeks_are_too_few() => Assert.Equal(VineSpread.Usual, VineSpread.Of(Estate(0.2, 0.2, sets: 2)));

    // Variance of the mean of a sample in two stages: 0.03² ∕ 2 + 0.06² ∕ 8 = 0.0009, by hand.
    [Fact]
    public void More_groups_and_more_vines_come_nearer_to_the_block() =>
        Assert.Equal(0.03, new VineSpread(0.03, 0.06).OfMeanMpa(vines: 8, groups: 2), 1e-12);

    private static List<List<List<LeafFact>>> Estate(double groupMpa, double vineMpa, int sets)
    {
        var numbers = new NormalNumbers("vines");
        return [.. Enumerable.Range(0, Blocks).Select(_ =>
        {
            var groups = Enumerable.Range(0, 3).Select(_ => groupMpa * numbers.Next()).ToArray();
            var vines = Enumerable.Range(0, 12).Select(v => groups[v / 4] + (vineMpa * numbers.Next())).ToArray();
            return Enumerable.Range(0, sets).Select(week => vines.Select((off, v) => new LeafFact(
                new DateTimeOffset(2025, 1, 6, 12, v, 0, TimeSpan.Zero).AddDays(7 * week), WaterPotentialMeasure.Leaf,
                1.0 + (0.05 * week) + off + (LeavesMpa * numbers.Next()), null, null, null, $"G{v / 4}", $"{v}")).ToList()).ToList();
        })];
    }
}
