using EstateWater.Planning.WhatIf;

namespace EstateWater.Web.Features.Week;

/// <summary>Computes the plan that keeps to changes made by hand.</summary>
public delegate Planning.Plan PlanWithEdits(WeekEdits edits, CancellationToken cancellation);

/// <summary>The plan on the manager's desk: what was changed by hand, undone, and the plan that follows.</summary>
/// <remarks>Computing runs off the caller's thread; a later change cancels an earlier one, so only the last answer is shown.</remarks>
/// <param name="compute">Computes a plan.</param>
/// <param name="plan">The planner's own plan, to begin with.</param>
/// <param name="onSameValve">Blocks that get water whenever a block does.</param>
/// <param name="clock">Times the pause before computing.</param>
public sealed class WeekDraft(
    PlanWithEdits compute, Planning.Plan plan, Func<string, IReadOnlyList<string>> onSameValve, TimeProvider clock) : IDisposable
{
    /// <summary>Wait before computing with other hours, so that held arrow keys make one plan and not twenty.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(300);

    private readonly Stack<(string What, WeekEdits Before)> undo = new();
    private Planning.Plan withoutEdits = plan;
    private CancellationTokenSource? running;

    /// <summary>The latest computed plan.</summary>
    public Planning.Plan Plan { get; private set; } = plan;

    /// <summary>What was changed by hand.</summary>
    public WeekEdits Edits { get; private set; } = WeekEdits.None;

    /// <summary>What follows from the changes, once <see cref="Plan"/> keeps to them; null where there are none.</summary>
    public PlanConsequences? Consequences { get; private set; }

    /// <summary>Whether a plan is being computed.</summary>
    public bool IsComputing => running is not null;

    /// <summary>Why the last plan could not be computed; null when it could.</summary>
    public string? Problem { get; private set; }

    /// <summary>What would be undone next, like “the hours of B01”; null when there is nothing.</summary>
    public string? UndoWhat => undo.TryPeek(out var last) ? last.What : null;

    /// <summary>Raised when anything above changed; may come from another thread.</summary>
    public event Action? Changed;

    /// <summary>Fixes a block's hours and computes the plan anew.</summary>
    public Task SetAsync(string block, double hours) => ApplyAsync(Edits.WithHours(block, hours, onSameValve(block)), $"the hours of {block}", Pause);

    /// <summary>Gives a block's hours back to the planner.</summary>
    public Task GiveBackAsync(string block) => ApplyAsync(Edits.WithHours(block, null, []), $"the hours of {block}");

    /// <summary>Puts other changes in the place of the present ones and computes the plan anew.</summary>
    /// <param name="edits">All changes from now on.</param>
    /// <param name="what">What undoing would take back.</param>
    public Task ApplyAsync(WeekEdits edits, string what) => ApplyAsync(edits, what, TimeSpan.Zero);

    /// <summary>Takes the last change back.</summary>
    public Task UndoAsync()
    {
        if (!undo.TryPop(out var last))
        {
            return Task.CompletedTask;
        }

        Edits = last.Before;
        return ComputeAsync();
    }

    /// <summary>Goes on from changes that were kept; not where the manager has begun anew.</summary>
    public Task RestoreAsync(WeekEdits keptBefore) =>
        keptBefore.IsEmpty || !Edits.IsEmpty || undo.Count > 0 ? Task.CompletedTask : ApplyAsync(keptBefore, "all changes kept from before");

    /// <summary>Goes on from newer knowledge and the plan made from it, keeping what was changed by hand.</summary>
    public Task RebaseAsync(PlanWithEdits newer, Planning.Plan newerPlan)
    {
        (compute, withoutEdits) = (newer, newerPlan);
        if (!Edits.IsEmpty)
        {
            return ComputeAsync();
        }

        Show(newerPlan, Edits);
        Changed?.Invoke();
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        running?.Cancel();
        running = null;
    }

    private Task ApplyAsync(WeekEdits edits, string what, TimeSpan pause)
    {
        undo.Push((what, Edits));
        Edits = edits;
        return ComputeAsync(pause);
    }

    private void Show(Planning.Plan answer, WeekEdits edits)
    {
        (Plan, Problem) = (answer, null);
        Consequences = edits.IsEmpty ? null : PlanConsequences.Between(withoutEdits, answer);
    }

    private async Task ComputeAsync(TimeSpan pause = default)
    {
        running?.Cancel();
        using var mine = running = new CancellationTokenSource();
        var (plan, edits) = (compute, Edits);
        Consequences = null;
        Changed?.Invoke();
        try
        {
            await Task.Delay(pause, clock, mine.Token);
            var answer = await Task.Run(() => plan(edits, mine.Token), mine.Token);
            mine.Token.ThrowIfCancellationRequested();
            Show(answer, edits);
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
