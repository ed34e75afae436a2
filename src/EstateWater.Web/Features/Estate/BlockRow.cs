using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Parts;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Estate;

/// <summary>A block as the map and the list show it: the same words in both.</summary>
/// <param name="Block">The block.</param>
/// <param name="Plan">What the plan says of it.</param>
/// <param name="Look">Its stress class today.</param>
/// <param name="ReadOn">Day of its latest reading set; null when it was never read.</param>
public sealed record BlockRow(Block Block, BlockPlan Plan, StressLook Look, DateOnly? ReadOn)
{
    /// <summary>Address of its page.</summary>
    public string Href => "/blocks/" + Uri.EscapeDataString(Block.Code);

    /// <summary>Code and name: “B07 River flat”.</summary>
    public string FullName => Block.Name is { Length: > 0 } name && name != Block.Code ? $"{Block.Code} {name}" : Block.Code;

    /// <summary>The driest day expected without water, in the middle of the band; null when nothing can be expected.</summary>
    public OutlookDay? Peak => Plan.Outlook.MaxBy(day => day.UnwateredBar.P50);

    /// <summary>Whether it passes its ceiling within the horizon if nothing is applied.</summary>
    public bool PassesCeiling => Peak is { } peak && peak.UnwateredBar.P50 > Plan.CeilingBar;

    /// <summary>All blocks, the most urgent first.</summary>
    public static IReadOnlyList<BlockRow> From(EstateSnapshot snapshot)
    {
        var plans = snapshot.Plan.Blocks.ToDictionary(plan => plan.Block);
        return [.. snapshot.Contents.Blocks
            .Select(block => From(block, plans[block.Code], snapshot))
            .OrderBy(row => row.Plan.Rank)];
    }

    private static BlockRow From(Block block, BlockPlan plan, EstateSnapshot snapshot)
    {
        DateOnly? readOn = plan.Latest is { } latest
            ? snapshot.DayOf(latest.TakenAt)
            : null;
        var recent = readOn is { } day && snapshot.Today.DayNumber - day.DayNumber <= StressLook.RecentDays;
        return new BlockRow(block, plan, recent ? StressLook.Of(plan.Latest!.StressClass) : StressLook.Unknown, readOn);
    }
}
