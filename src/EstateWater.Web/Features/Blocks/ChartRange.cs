namespace EstateWater.Web.Features.Blocks;

/// <summary>The span of time that a block's history shows, as it stands in the address.</summary>
/// <param name="Key">Value in the address.</param>
/// <param name="Words">As people say it.</param>
/// <param name="Days">Days back from today; null for the whole season.</param>
public sealed record ChartRange(string Key, string Words, int? Days)
{
    /// <summary>The longest first; the first is what an address without a range shows.</summary>
    public static IReadOnlyList<ChartRange> All { get; } =
    [
        new("season", "Season", null),
        new("6w", "Six weeks", 42),
        new("2w", "Two weeks", 14),
    ];

    /// <summary>The range of an address; a mangled one shows the season.</summary>
    public static ChartRange Parse(string? key) => All.FirstOrDefault(range => range.Key == key) ?? All[0];

    /// <summary>First day that is shown.</summary>
    public DateOnly From(DateOnly seasonStart, DateOnly today) => Days is { } days ? today.AddDays(-days) : seasonStart;
}
