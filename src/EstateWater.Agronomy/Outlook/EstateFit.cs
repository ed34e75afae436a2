namespace EstateWater.Agronomy.Outlook;

/// <summary>Every block of an estate fitted, the blocks informing one another.</summary>
public sealed class EstateFit
{

    private readonly EstateKnowledge knowledge;

    private EstateFit(IReadOnlyList<FittedBlock> blocks, EstateKnowledge knowledge)
    {
        Blocks = blocks;
        this.knowledge = knowledge;
    }

    /// <summary>In the order they were given.</summary>
    public IReadOnlyList<FittedBlock> Blocks { get; }

    /// <summary>Fits the blocks in two passes: each alone, then each with the prior that all of them gave.</summary>
    /// <remarks>Further passes would narrow the prior, as in expectation-maximisation; over whole simulated seasons the band then holds too little, and the outlook comes no nearer.</remarks>
    /// <param name="blocks">What is known of each.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="parallelism">Blocks at once; −1 for as many as the machine has processors.</param>
    /// <returns>In the order of <paramref name="blocks"/>; the numbers do not depend on that order.</returns>
    public static EstateFit Fit(IReadOnlyList<BlockEvidence> blocks, CancellationToken cancellation, int parallelism = -1)
    {
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = parallelism };
        var fitted = new FittedBlock[blocks.Count];
        Parallel.For(0, blocks.Count, options, i => fitted[i] = Alone(blocks[i]));
        var knowledge = EstateKnowledge.Unread.Learn([.. fitted.OrderBy(b => b.Evidence.Code, StringComparer.Ordinal)], options);
        Parallel.For(0, blocks.Count, options, i => fitted[i] = BlockFit.Fit(blocks[i], knowledge, fitted[i].Observations));
        return new EstateFit(fitted, knowledge);
    }

    /// <summary>One block from newer evidence, with what the estate's blocks told of one another before.</summary>
    /// <remarks>
    /// What <see cref="Fit"/> does with it in both passes. With the evidence that was fitted it gives the same
    /// numbers; with newer evidence it differs from fitting the whole estate anew by as much as that evidence moves what
    /// the blocks tell: one block's share of it.
    /// </remarks>
    public FittedBlock Refit(BlockEvidence block) => BlockFit.Fit(block, knowledge, Alone(block).Observations);

    private static FittedBlock Alone(BlockEvidence block) => BlockFit.Weighed(BlockFit.Fit(block, EstateKnowledge.Unread));
}
