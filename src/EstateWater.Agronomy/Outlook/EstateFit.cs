namespace EstateWater.Agronomy.Outlook;

/// <summary>Fits every block of an estate, letting the blocks inform one another.</summary>
public static class EstateFit
{
    // The prior that the blocks give narrows pass by pass, as in expectation-maximisation, and settles after a few.
    private const int Passes = 4;

    /// <summary>Fits the blocks in passes: each alone, then each with the prior that all of them gave in the pass before.</summary>
    /// <param name="blocks">What is known of each.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="parallelism">Blocks at once; −1 for as many as the machine has processors.</param>
    /// <returns>In the order of <paramref name="blocks"/>; the numbers do not depend on that order.</returns>
    public static IReadOnlyList<FittedBlock> Fit(IReadOnlyList<BlockEvidence> blocks, CancellationToken cancellation, int parallelism = -1)
    {
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = parallelism };
        var fitted = new FittedBlock[blocks.Count];
        Parallel.For(0, blocks.Count, options, i => fitted[i] = BlockFit.Fit(blocks[i], EstateKnowledge.Unread));
        var knowledge = EstateKnowledge.Unread;
        var doubt = fitted.Select(BlockFit.Doubt).ToArray();
        for (var pass = 1; pass < Passes; pass++)
        {
            knowledge = knowledge.Learn([.. fitted.OrderBy(b => b.Evidence.Code, StringComparer.Ordinal)]);
            Parallel.For(0, blocks.Count, options, i => fitted[i] = BlockFit.Fit(blocks[i], knowledge, doubt[i]));
        }

        return fitted;
    }
}
