namespace EstateWater.Agronomy.Outlook;

/// <summary>What an estate's blocks tell about one another.</summary>
/// <param name="Prior">What a block is likely to be before its own readings count.</param>
/// <param name="Discrepancy">How far sets lie from any model of ours.</param>
internal sealed record EstateKnowledge(EstatePrior Prior, Discrepancy Discrepancy)
{
    /// <summary>Before any block is known.</summary>
    public static EstateKnowledge Unread { get; } = new(EstatePrior.Unread, Discrepancy.Unread);

    /// <summary>From blocks fitted with less of it; in order of their codes.</summary>
    public EstateKnowledge Learn(IReadOnlyList<FittedBlock> blocks, ParallelOptions options) =>
        new(Prior.Learn(blocks), DiscrepancyFit.Fit([.. blocks.Select(b => b.Innovation)], options));
}
