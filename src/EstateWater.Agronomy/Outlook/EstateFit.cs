namespace EstateWater.Agronomy.Outlook;

/// <summary>Every block of an estate fitted, the blocks informing one another.</summary>
public sealed class EstateFit
{
    // The prior that the blocks give narrows pass by pass, as in expectation-maximisation, and settles after a few.
    private const int Passes = 4;

    private EstateFit(IReadOnlyList<FittedBlock> blocks, EstatePrior prior)
    {
        Blocks = blocks;
        Prior = prior;
    }

    /// <summary>In the order they were given.</summary>
    public IReadOnlyList<FittedBlock> Blocks { get; }

    /// <summary>What the blocks told of one another before the last pass.</summary>
    public EstatePrior Prior { get; }

    /// <summary>Fits the blocks in passes: each alone, then each with the prior that all of them gave in the pass before.</summary>
    /// <returns>In the order of <paramref name="blocks"/>; the numbers do not depend on that order.</returns>
    public static EstateFit Fit(IReadOnlyList<BlockEvidence> blocks, CancellationToken cancellation)
    {
        var options = new ParallelOptions { CancellationToken = cancellation };
        var fitted = new FittedBlock[blocks.Count];
        Parallel.For(0, blocks.Count, options, i => fitted[i] = BlockFit.Fit(blocks[i], EstatePrior.Unread));
        var doubt = fitted.Select(BlockFit.Doubt).ToArray();
        var prior = EstatePrior.Unread;
        for (var pass = 1; pass < Passes; pass++)
        {
            prior = EstatePrior.From([.. fitted.OrderBy(b => b.Evidence.Code, StringComparer.Ordinal)]);
            Parallel.For(0, blocks.Count, options, i => fitted[i] = BlockFit.Fit(blocks[i], prior, doubt[i]));
        }

        return new EstateFit(fitted, prior);
    }

    /// <summary>One block from newer evidence, with the prior that the estate's blocks gave before.</summary>
    /// <remarks>
    /// What <see cref="Fit"/> does in its first and its last pass. With the evidence that was fitted it gives the same
    /// numbers; with newer evidence it differs from fitting the whole estate anew by as much as that evidence moves the
    /// prior: one block's share of it.
    /// </remarks>
    public FittedBlock Refit(BlockEvidence block) => BlockFit.Fit(block, Prior, BlockFit.Doubt(BlockFit.Fit(block, EstatePrior.Unread)));

}
