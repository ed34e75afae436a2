using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.Phenology;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>A block from today to the end of its watering: what is wanted of it, what it shades, where it stands.</summary>
internal sealed class BlockSeason
{
    /// <summary>Makes the season of a block.</summary>
    /// <param name="course">The block's coming days.</param>
    /// <param name="weather">Of its station; long enough.</param>
    /// <param name="today">First day.</param>
    /// <param name="days">As <see cref="DaysLeft"/> says.</param>
    public BlockSeason(BlockCourse course, SeasonWeather weather, DateOnly today, int days)
    {
        var state = course.State;
        Block = state.Block;
        Weather = weather;
        Days = days;
        RateMmPerH = course.RateMmPerH;
        Limits = DayLimits.Of(state.Block, state.Stages, today, Math.Max(1, days));
        Start = new SeasonOutlook(course.Fitted, Limits.Measure, today);
        ShadedFraction = state.ShadedAhead(today, days);
        Ripening = [.. Enumerable.Range(0, days).Select(d => state.Stages.At(today.AddDays(d)) is >= GrowthStageCurve.VeraisonElStage and < GrowthStageCurve.RipeElStage)];
    }

    public PlanBlock Block { get; }

    public SeasonWeather Weather { get; }

    /// <summary>Days until its last watering.</summary>
    public int Days { get; }

    /// <summary>[mm/h]</summary>
    public double RateMmPerH { get; }

    public DayLimits Limits { get; }

    /// <summary>This morning.</summary>
    public SeasonOutlook Start { get; }

    public double[] ShadedFraction { get; }

    public bool[] Ripening { get; }

    /// <summary>Volume of one hour. [m³/h]</summary>
    public double FlowM3PerH => RateMmPerH * Block.AreaM2 / 1000;

    /// <summary>Days from today to harvest; to leaf fall where the fruit is off; never past the season's last day.</summary>
    public static int DaysLeft(BlockState state, DateOnly today)
    {
        var year = Season.YearOf(today, state.Block.LatitudeDegrees);
        var last = Season.LastDay(year, state.Block.LatitudeDegrees);
        var end = state.Stages.At(today) < GrowthStageCurve.RipeElStage ? GrowthStageCurve.RipeElStage : GrowthStageCurve.LeafFallElStage;
        return Math.Max(0, (state.Stages.DateOf(end, year) ?? last).DayNumber - today.DayNumber);
    }
}
