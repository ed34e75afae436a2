namespace EstateWater.Agronomy.Outlook;

/// <summary>What an estate's blocks tell about one another.</summary>
/// <param name="Prior">What a block is likely to be before its own readings count.</param>
/// <param name="Discrepancy">How far sets lie from any model of ours.</param>
internal sealed record EstateKnowledge(EstatePrior Prior, Discrepancy Discrepancy)
{
    // So many tell an estate's habits well enough.
    private const int MostBlocks = 60;

    // What blocks have in common leans on how far they differ, and the other way round: each is learned twice.
    private const int Rounds = 2;

    /// <summary>Before any block is known.</summary>
    public static EstateKnowledge Unread { get; } = new(EstatePrior.Unread, Discrepancy.Unread);

    /// <summary>From blocks fitted with less of it.</summary>
    /// <param name="blocks">In order of their codes, their observations weighed.</param>
    /// <param name="options">How many at once, and until when.</param>
    public EstateKnowledge Learn(IReadOnlyList<FittedBlock> blocks, ParallelOptions options)
    {
        var read = blocks.Where(b => b.WasRead).ToList();
        var every = ((read.Count - 1) / MostBlocks) + 1;
        var chosen = read.Where((_, i) => i % every == 0).ToList();
        var (prior, spreads) = (Prior.Learn(blocks), DiscrepancyFit.Unread);
        var innovations = new Innovation?[chosen.Count];
        for (var round = 0; round < Rounds; round++)
        {
            prior = prior with { Mean = EstateMean.Learn(chosen, prior.With(spreads.Apart, spreads.Wandering), Prior.Mean, spreads.Discrepancy, options) };
            Parallel.For(0, chosen.Count, options, i => innovations[i] = Innovation.Of(chosen[i], prior));
            spreads = DiscrepancyFit.Fit([.. innovations.OfType<Innovation>().Where(i => i.Observations.Count > 1)], options);
        }

        return new EstateKnowledge(prior.With(spreads.Apart, spreads.Wandering), spreads.Discrepancy);
    }
}
