namespace EstateWater.Agronomy.Outlook;

/// <summary>Fits every block of an estate, letting the blocks inform one another.</summary>
public static class EstateFit
{
    /// <summary>Fits the blocks in two passes: each alone, then each with the prior that all of them gave.</summary>
    /// <returns>In the order of <paramref name="blocks"/>; the numbers do not depend on that order.</returns>
    public static IReadOnlyList<FittedBlock> Fit(IReadOnlyList<BlockEvidence> blocks, CancellationToken cancellation)
    {
        var options = new ParallelOptions { CancellationToken = cancellation };
        var alone = new FittedBlock[blocks.Count];
        Parallel.For(0, blocks.Count, options, i => alone[i] = BlockFit.Fit(blocks[i], EstatePrior.Unread));
        var prior = EstatePrior.From([.. alone.OrderBy(b => b.Evidence.Code, StringComparer.Ordinal)]);
        var together = new FittedBlock[blocks.Count];
        Parallel.For(0, blocks.Count, options, i => together[i] = BlockFit.Fit(blocks[i], prior, BlockFit.Doubt(alone[i])));
        return together;
    }
}
