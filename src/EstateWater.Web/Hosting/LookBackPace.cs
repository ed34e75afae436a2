using EstateWater.Web.State;

namespace EstateWater.Web.Hosting;

/// <summary>Begins to hold past outlooks against the readings when the program has run a while, and again after the data changed: never while it starts, and not at every change of a busy hour.</summary>
/// <param name="snapshots">The estate as the pages show it.</param>
/// <param name="past">What does the work.</param>
/// <param name="clock">Counts the pause.</param>
/// <param name="log">Hears of failures.</param>
public sealed partial class LookBackPace(EstateSnapshots snapshots, PastOutlooks past, TimeProvider clock, ILogger<LookBackPace> log) : BackgroundService
{
    /// <summary>Between one look for new data and the next.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMinutes(10);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken))
            {
                await LookAsync(stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The program stops.
        }
    }

    private async Task LookAsync(CancellationToken stopping)
    {
        try
        {
            if (await snapshots.GetAsync(stopping) is { HasPlan: true } snapshot)
            {
                past.Ask(snapshot);
            }
        }
        catch (Exception failure) when (!stopping.IsCancellationRequested)
        {
            // Pages show the same failure to their readers; it must not stop the program.
            LogFailure(log, failure);
        }
    }

    [LoggerMessage(LogLevel.Error, "The estate could not be read to look back at past outlooks.")]
    private static partial void LogFailure(ILogger logger, Exception failure);
}
