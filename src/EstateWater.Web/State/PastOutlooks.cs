using EstateWater.Data.Model;
using EstateWater.Planning.Accuracy;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Web.State;

/// <summary>
/// Holds past outlooks against the readings in the background: begun when the page of past outlooks first asks, or when the program
/// has run a while; kept for all pages as long as the data stand, and over a restart until it is done anew. No page waits for it, and it leaves half of the processors to them.
/// </summary>
public sealed partial class PastOutlooks(ILogger<PastOutlooks> log, KeptLookBack? kept = null) : IDisposable
{
    private readonly Lock gate = new();
    private readonly HindcastMemory memory = new();
    private LookBack now = new(LookBackPhase.NotAsked);
    private EstateSnapshot? looked;
    private CancellationTokenSource? running;
    private bool isRecalled;

    /// <summary>What is known at this moment.</summary>
    public LookBack Now
    {
        get
        {
            lock (gate)
            {
                return now;
            }
        }
    }

    /// <summary>What is known of an estate: after a restart, what was known last. Begins nothing.</summary>
    /// <param name="snapshot">What the asking page shows.</param>
    public LookBack For(EstateSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        lock (gate)
        {
            if (!isRecalled)
            {
                isRecalled = true;
                if (now.Report is null && kept?.Recall(snapshot.Contents.Estate.Name) is var (report, asOf))
                {
                    now = now with { Report = report, AsOf = asOf };
                }
            }

            return now;
        }
    }

    /// <summary>Begins the work unless it goes on, was done for the same data, or was stopped; gives what is known. Never waits.</summary>
    /// <param name="snapshot">What the asking page shows.</param>
    public LookBack Ask(EstateSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        lock (gate)
        {
            For(snapshot);
            if (now.Phase is LookBackPhase.NotAsked || (now.Phase is LookBackPhase.Known && !IsLooked(snapshot)))
            {
                Begin(snapshot);
            }

            return now;
        }
    }

    /// <summary>Begins the work although it was stopped or failed.</summary>
    /// <param name="snapshot">What the asking page shows.</param>
    public void Start(EstateSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        lock (gate)
        {
            if (!now.IsWorking)
            {
                Begin(snapshot);
            }
        }
    }

    /// <summary>Stops the work. What was learnt so far is kept for the next start.</summary>
    public void Stop()
    {
        lock (gate)
        {
            if (now.IsWorking)
            {
                running!.Cancel();
                now = now with { Phase = LookBackPhase.Stopped };
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            running?.Cancel();
        }
    }

    private bool IsLooked(EstateSnapshot snapshot) =>
        looked is not null && (looked.Version == snapshot.Version || PlanInputs.AreSame(looked.Contents, snapshot.Contents, snapshot.Plan.AsOf));

    private void Begin(EstateSnapshot snapshot)
    {
        looked = snapshot;
        now = new LookBack(LookBackPhase.Working, Report: now.Report, AsOf: now.AsOf);
        var stop = running = new CancellationTokenSource();
        _ = Task.Run(() => Run(snapshot.Contents, snapshot.Plan.AsOf, stop));
    }

    private void Run(EstateContents contents, DateTimeOffset asOf, CancellationTokenSource stop)
    {
        try
        {
            var held = Hindcast.Run(
                (then, days) => PastKnowledge.At(contents, then, days),
                PlanRequests.From(contents, asOf),
                AccuracyReport.Leads,
                memory,
                // Several threads may tell their mornings out of turn.
                new Listener(progress => Change(stop, before => before.Progress?.Done > progress.Done ? before : before with { Progress = progress })),
                Hindcast.ParallelismFor(Environment.ProcessorCount / 2),
                stop.Token);
            var report = new AccuracyReport(held);
            Change(stop, before => new LookBack(LookBackPhase.Known, before.Progress, report, asOf));
            Keep(contents.Estate.Name, asOf, report, stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Stop has said so already.
        }
        catch (Exception failure)
        {
            LogFailure(log, failure);
            Change(stop, before => before with { Phase = LookBackPhase.Failed, Problem = failure.Message });
        }
    }

    // Without it the pages lack nothing until the next start.
    private void Keep(string estate, DateTimeOffset asOf, AccuracyReport report, CancellationTokenSource stop)
    {
        try
        {
            if (!stop.IsCancellationRequested)
            {
                kept?.Keep(estate, asOf, report);
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            LogNotKept(log, failure);
        }
    }

    // A run that was stopped has nothing more to say.
    private void Change(CancellationTokenSource stop, Func<LookBack, LookBack> change)
    {
        lock (gate)
        {
            if (running == stop && !stop.IsCancellationRequested)
            {
                now = change(now);
            }
        }
    }

    [LoggerMessage(LogLevel.Error, "Holding past outlooks against the readings failed.")]
    private static partial void LogFailure(ILogger logger, Exception failure);

    [LoggerMessage(LogLevel.Warning, "What was looked back at could not be kept; after a restart it is worked out again.")]
    private static partial void LogNotKept(ILogger logger, Exception failure);

    private sealed class Listener(Action<HindcastProgress> hear) : IProgress<HindcastProgress>
    {
        public void Report(HindcastProgress value) => hear(value);
    }
}
