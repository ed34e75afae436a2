namespace EstateWater.Web.Features.Week;

/// <summary>A place on the board of sets, for a set's beginning or its end.</summary>
/// <param name="Source">The source in whose row it is.</param>
/// <param name="Night">The night, by the day on which the source's window opens.</param>
/// <param name="Quarter">Quarter hours after the window's opening.</param>
public sealed record BoardPlace(string Source, DateOnly Night, int Quarter)
{
    /// <summary>The board's step.</summary>
    public static readonly TimeSpan QuarterHour = TimeSpan.FromMinutes(15);
}
