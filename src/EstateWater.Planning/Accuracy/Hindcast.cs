namespace EstateWater.Planning.Accuracy;

/// <summary>Holds past outlooks against the readings that followed, knowing at each moment only what was known then.</summary>
public static class Hindcast
{
    // An estate that is being learnt takes memory; more at once would take much of it on a large machine. Ours.
    private const int MostAtOnce = 4;

    /// <summary>Every reading set of the estate that had a set of its measure before it.</summary>
    /// <param name="requestAt">The estate as it was known at a moment, by a horizon in days. Called from several threads at once.</param>
    /// <param name="full">The estate as it is known now: the readings and the applied water that followed.</param>
    /// <param name="leads">How many days ahead, each 1 to 30. Mornings that several leads share are learnt once.</param>
    /// <param name="memory">Remembers mornings from one run to the next.</param>
    /// <param name="progress">Hears after every morning how far the work is. Called from several threads at once.</param>
    /// <param name="parallelism">Mornings learnt at once, 1 to 4.</param>
    /// <param name="cancellation">Stops the work; what was learnt so far stays remembered.</param>
    /// <returns>By lead as given, then date, then block.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A lead is outside 1 to 30 days, or the parallelism outside 1 to 4.</exception>
    public static IReadOnlyList<HeldAgainst> Run(
        Func<DateTimeOffset, int, PlanRequest> requestAt,
        PlanRequest full,
        IReadOnlyList<int> leads,
        HindcastMemory? memory = null,
        IProgress<HindcastProgress>? progress = null,
        int parallelism = 1,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(requestAt);
        ArgumentNullException.ThrowIfNull(full);
        ArgumentNullException.ThrowIfNull(leads);
        RequireRanges(leads, parallelism);
        memory ??= new HindcastMemory();
        var mornings = HindcastMorning.Of(full, leads);
        var held = new IReadOnlyList<HeldAgainst>[mornings.Count];
        var done = 0;
        progress?.Report(new HindcastProgress(0, mornings.Count));
        Parallel.For(0, mornings.Count, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = parallelism }, i =>
        {
            held[i] = memory.GetOrHold(mornings[i], requestAt(mornings[i].AsOf, mornings[i].HorizonDays), cancellation);
            progress?.Report(new HindcastProgress(Interlocked.Increment(ref done), mornings.Count));
        });
        var byLead = held.SelectMany(each => each).ToLookup(h => h.LeadDays);
        return [.. leads.SelectMany(lead => byLead[lead].OrderBy(h => h.Date).ThenBy(h => h.Block, StringComparer.Ordinal).ThenBy(h => h.Measure))];
    }

    /// <summary>Mornings to learn at once when part of the machine may be used.</summary>
    /// <param name="processors">Processors that may be used.</param>
    public static int ParallelismFor(int processors) => Math.Clamp(processors, 1, MostAtOnce);

    private static void RequireRanges(IReadOnlyList<int> leads, int parallelism)
    {
        foreach (var lead in leads.Where(lead => lead is < 1 or > Planner.LongestHorizonDays))
        {
            throw new ArgumentOutOfRangeException(nameof(leads), lead, $"a lead must be 1 to {Planner.LongestHorizonDays} days");
        }

        if (parallelism is < 1 or > MostAtOnce)
        {
            throw new ArgumentOutOfRangeException(nameof(parallelism), parallelism, $"parallelism must be 1 to {MostAtOnce}");
        }
    }
}

/// <summary>How far looking back has come.</summary>
/// <param name="Done">Mornings done.</param>
/// <param name="Total">Mornings in all.</param>
public sealed record HindcastProgress(int Done, int Total);
