namespace EstateWater.Web.Features.Week;

/// <summary>Computes the plan with some blocks' hours fixed by hand.</summary>
public delegate Planning.Plan PlanWithHours(IReadOnlyDictionary<string, double> hoursByHand, CancellationToken cancellation);

/// <summary>The plan on the manager's desk: hours changed by hand, undone, and the plan that follows from them.</summary>
/// <remarks>Computing runs off the caller's thread; a later change cancels an earlier one, so only the last answer is shown.</remarks>
/// <param name="compute">Computes a plan.</param>
/// <param name="plan">The plan to begin with.</param>
/// <param name="onSameValve">Blocks that get water whenever a block does; the last hours given to one of them count for all.</param>
/// <param name="clock">Times the pause before computing.</param>
public sealed class WeekDraft(
    PlanWithHours compute, Planning.Plan plan, Func<string, IReadOnlyList<string>> onSameValve, TimeProvider clock) : IDisposable
{
    /// <summary>Wait before computing, so that held arrow keys make one plan and not twenty.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(300);

    private readonly Stack<(string Block, Dictionary<string, double> Before)> changes = new();
    private Dictionary<string, double> byHand = [];
    private CancellationTokenSource? running;

    /// <summary>The latest computed plan.</summary>
    public Planning.Plan Plan { get; private set; } = plan;

    /// <summary>Hours fixed by hand, by block. [h]</summary>
    public IReadOnlyDictionary<string, double> HoursByHand => byHand;

    /// <summary>Whether a plan is being computed.</summary>
    public bool IsComputing => running is not null;

    /// <summary>Why the last plan could not be computed; null when it could.</summary>
    public string? Problem { get; private set; }

    /// <summary>The block whose change would be undone next; null when there is none.</summary>
    public string? UndoBlock => changes.TryPeek(out var last) ? last.Block : null;

    /// <summary>Raised when anything above changed; may come from another thread.</summary>
    public event Action? Changed;

    /// <summary>Fixes a block's hours and computes the plan anew.</summary>
    public Task SetAsync(string block, double hours) => ChangeAsync(block, hours);

    /// <summary>Gives a block's hours back to the planner.</summary>
    public Task GiveBackAsync(string block) => ChangeAsync(block, null);

    /// <summary>Takes the last change back.</summary>
    public Task UndoAsync()
    {
        if (!changes.TryPop(out var last))
        {
            return Task.CompletedTask;
        }

        byHand = last.Before;
        return ComputeAsync();
    }

    /// <summary>Goes on from newer knowledge and the plan made from it, keeping the hours fixed by hand.</summary>
    public Task RebaseAsync(PlanWithHours newer, Planning.Plan newerPlan)
    {
        compute = newer;
        if (byHand.Count > 0)
        {
            return ComputeAsync();
        }

        (Plan, Problem) = (newerPlan, null);
        Changed?.Invoke();
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        running?.Cancel();
        running = null;
    }

    private Task ChangeAsync(string block, double? hours)
    {
        changes.Push((block, byHand));

        // A new dictionary each time: the computing thread reads the one it was given, and undo brings the old one back.
        byHand = new(byHand);
        byHand.Remove(block);
        if (hours is { } fixedHours)
        {
            onSameValve(block).ToList().ForEach(other => byHand.Remove(other));
            byHand[block] = fixedHours;
        }

        return ComputeAsync();
    }

    private async Task ComputeAsync()
    {
        running?.Cancel();
        using var mine = running = new CancellationTokenSource();
        var (plan, hours) = (compute, byHand);
        Changed?.Invoke();
        try
        {
            await Task.Delay(Pause, clock, mine.Token);
            var answer = await Task.Run(() => plan(hours, mine.Token), mine.Token);
            mine.Token.ThrowIfCancellationRequested();
            (Plan, Problem) = (answer, null);
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            return;
        }
        catch (ArgumentException refused)
        {
            Problem = refused.Message;
        }
        finally
        {
            if (running == mine)
            {
                running = null;
            }
        }

        Changed?.Invoke();
    }
}
