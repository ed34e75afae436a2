namespace EstateWater.Planning.Accuracy;

/// <summary>How good past outlooks were, by how far ahead they looked and by block.</summary>
/// <param name="Held">Every outlook held against a set: by lead, then date, then block.</param>
public sealed record AccuracyReport(IReadOnlyList<HeldAgainst> Held)
{
    /// <summary>How far ahead past outlooks are looked at. [d]</summary>
    public static IReadOnlyList<int> Leads { get; } = [1, 3, 7, 10];

    /// <summary>The lead that stands for the rest: from one weekly round to the next. [d]</summary>
    public const int WeekDays = 7;

    // With fewer sets a block's score is chance. Ours.
    private const int FewSets = 5;

    private readonly ILookup<(string Block, int LeadDays), HeldAgainst> byBlock = Held.ToLookup(h => (h.Block, h.LeadDays));

    /// <summary>The whole estate at one lead; null when no set was held.</summary>
    public AccuracyScore? Estate(int leadDays) => AccuracyScore.Of([.. Held.Where(h => h.LeadDays == leadDays)]);

    /// <summary>One block at one lead; null when no set was held.</summary>
    public AccuracyScore? Block(string code, int leadDays) => AccuracyScore.Of(HeldOf(code, leadDays));

    /// <summary>What was held of one block at one lead, in order of date.</summary>
    public IReadOnlyList<HeldAgainst> HeldOf(string code, int leadDays) => [.. byBlock[(code, leadDays)]];

    /// <summary>Every block at one lead, those that the outlook knows poorly first; blocks with fewer than five sets come last, because they tell little.</summary>
    public IReadOnlyList<(string Block, AccuracyScore Score)> Blocks(int leadDays) =>
        [.. Held.Select(h => h.Block).Distinct()
            .Select(code => (Block: code, Score: Block(code, leadDays)))
            .Where(each => each.Score is not null)
            .Select(each => (each.Block, Score: each.Score!))
            .OrderBy(each => each.Score.Sets < FewSets)
            .ThenByDescending(each => each.Score.ErrorBar)
            .ThenBy(each => each.Block, StringComparer.Ordinal)];
}
