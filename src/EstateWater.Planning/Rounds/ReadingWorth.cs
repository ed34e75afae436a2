using EstateWater.Agronomy.Statistics;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Rounds;

/// <summary>What it is worth to read a block before its water is decided: the expected fall in trouble and water.</summary>
/// <remarks>
/// The choices are so many hours on the first evening after the reading, none to the longest, and the sets as planned. What
/// each costs is counted version by version of the block's ensemble; a version's tension on the day of the round is what
/// the chamber would show. So a block whose band lies wholly below its ceiling, or wholly above it, teaches little: the
/// choice is the same whatever the gauge shows.
/// </remarks>
internal static class ReadingWorth
{
    // What a set is off as a whole, however many leaves: observer, hour, vines chosen. [MPa]; ours, as before any set is read.
    private const double SetErrorMpa = 0.02;

    private static readonly double[] HoursTried = [0, 2, 4, 6, 8, 12];

    /// <summary>Expected fall of the cost, in the planner's trouble by hectares and priority; 0 or more.</summary>
    /// <param name="course">The block's coming days.</param>
    /// <param name="day">Days ahead on which it is read: 0 is today.</param>
    /// <param name="leaves">What will be read.</param>
    /// <param name="plannedQuarters">Quarter hours by day of water, as planned.</param>
    /// <param name="longestHours">The longest opening of the block's source. [h]</param>
    /// <param name="seasonPerMm">What a millimetre is worth later in the season.</param>
    public static double Of(BlockCourse course, int day, UsualLeaves leaves, IReadOnlyList<int> plannedQuarters, double longestHours, double seasonPerMm)
    {
        var before = plannedQuarters.Select((quarters, d) => d < day ? quarters : 0).ToArray();
        var choices = HoursTried
            .Where(hours => hours <= longestHours)
            .Select(hours => before.Select((quarters, d) => d == day ? (int)(4 * hours) : quarters).ToArray())
            .Append([.. plannedQuarters])
            .ToList();
        var block = course.State.Block;
        var perHour = WaterPrice.PerHour([(block, course.RateMmPerH)], seasonPerMm);
        var costs = choices.Select(quarters =>
        {
            var water = perHour * quarters.Sum() / 4.0;
            return (IReadOnlyList<double>)[.. course.CostByMember(course.Watered(quarters)).Select(cost => (WaterPrice.Weight(block) * cost) + water)];
        }).ToList();
        var read = course.Watered(before)[day];
        var error = Math.Sqrt((leaves.SpreadMpa * leaves.SpreadMpa / leaves.Leaves) + (SetErrorMpa * SetErrorMpa));
        return SampleInformation.Expected(read, costs, error);
    }
}
