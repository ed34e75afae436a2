using EstateWater.Data.Model;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Report;

/// <summary>All that a report shows.</summary>
/// <param name="Estate">The estate as its page says it.</param>
/// <param name="Choice">What was asked.</param>
/// <param name="Blocks">The blocks that are told of, the most urgent first.</param>
public sealed record ReportView(EstateView Estate, ReportChoice Choice, IReadOnlyList<BlockReport> Blocks)
{
    /// <summary>Looks at a snapshot.</summary>
    /// <param name="snapshot">The snapshot; it has a plan.</param>
    /// <param name="plans">Plans of the past weeks.</param>
    /// <param name="choice">What is asked.</param>
    /// <param name="units">How its reader is told days.</param>
    public static ReportView From(EstateSnapshot snapshot, IReadOnlyList<PublishedPlan> plans, ReportChoice choice, UnitChoice units)
    {
        var estate = EstateView.From(snapshot, units);
        var rows = choice.Of(estate.Rows, estate.Decisions);
        var blocks = new BlockReports(snapshot, plans, rows);
        return new ReportView(estate, choice, [.. rows.Select(blocks.Of)]);
    }
}
