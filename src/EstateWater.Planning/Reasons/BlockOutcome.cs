using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Weather;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning.Reasons;

/// <summary>A block with its need, what it gets and what follows.</summary>
internal sealed class BlockOutcome
{
    public BlockOutcome(
        BlockCourse course, DateOnly today, IReadOnlyList<HeatSpell> heat, ValveNeed need, IReadOnlyList<(Night Night, PlacedSet Set)> sets, int[] quartersByDay)
    {
        Course = course;
        Today = today;
        Heat = heat;
        Need = need;
        Sets = sets;
        QuartersByDay = quartersByDay;
        Quarters = quartersByDay.Sum();
        SeasonHours = course.State.Valve.HoursSince(SeasonSpan.Of(today, course.State.Block.LatitudeDegrees).First);
        Watered = Quarters == 0 ? course.Unwatered : course.Watered(quartersByDay);
        Urgency = course.State.Block.Priority / 3.0 * course.TroubleAbove(course.Unwatered);
    }

    public BlockCourse Course { get; }

    public DateOnly Today { get; }

    public IReadOnlyList<HeatSpell> Heat { get; }

    public ValveNeed Need { get; }

    public IReadOnlyList<(Night Night, PlacedSet Set)> Sets { get; }

    /// <summary>Quarter hours by day ahead in whose evening they begin.</summary>
    public IReadOnlyList<int> QuartersByDay { get; }

    public int Quarters { get; }

    /// <summary>Hours its valve was open this season so far. [h]</summary>
    public double SeasonHours { get; }

    /// <summary>Whether the season's water ends with this plan.</summary>
    public bool IsWaterUsedUp { get; init; }

    public double[][] Watered { get; }

    /// <summary>Trouble past the ceiling if nothing is applied, times priority.</summary>
    public double Urgency { get; }

    /// <summary>Middle tension less ceiling on the worst day without water. [MPa]</summary>
    public double ClosestToCeilingMpa => Enumerable.Range(0, Course.Unwatered.Length).Max(d => Descriptive.Median(Course.Unwatered[d]) - Course.Limits.CeilingMpa[d]);

    /// <summary>Day ahead whose middle tension stands highest above its ceiling, without water.</summary>
    public int WorstDay => Enumerable.Range(0, Course.Unwatered.Length).MaxBy(d => Descriptive.Median(Course.Unwatered[d]) - Course.Limits.CeilingMpa[d]);
}
