using EstateWater.Tests.Web.Host;
using EstateWater.Web.Hosting;
using EstateWater.Web.State;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Accuracy;

public sealed class LookBackPaceTests : IDisposable
{
    private readonly FakeTimeProvider clock = new(SmallEstate.AsOf);
    private readonly PastOutlooks past = new(NullLogger<PastOutlooks>.Instance);
    private int asked;

    [Fact]
    public async Task The_work_begins_by_itself_after_a_pause_and_not_before()
    {
        using var snapshots = new EstateSnapshots((version, _) => Task.FromResult(Snapshot(version)), clock);
        using var pace = await StartedAsync(snapshots);
        clock.Advance(LookBackPace.Pause - TimeSpan.FromSeconds(1));
        Assert.Equal(LookBackPhase.NotAsked, past.Now.Phase);
        clock.Advance(TimeSpan.FromSeconds(1));
        await UntilAsync(() => past.Now.Phase == LookBackPhase.Known);
        await pace.StopAsync(TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task A_failure_to_read_the_estate_does_not_end_the_pace()
    {
        using var snapshots = new EstateSnapshots(
            (version, _) => Interlocked.Increment(ref asked) == 1 ? throw new IOException("disk") : Task.FromResult(Snapshot(version)), clock);
        using var pace = await StartedAsync(snapshots);
        clock.Advance(LookBackPace.Pause);
        await UntilAsync(() => Volatile.Read(ref asked) == 1);
        await UntilAsync(() =>
        {
            clock.Advance(LookBackPace.Pause);
            return past.Now.Phase == LookBackPhase.Known;
        });
        await pace.StopAsync(TestContext.Current.CancellationToken);
    }

    public void Dispose() => past.Dispose();

    private async Task<LookBackPace> StartedAsync(EstateSnapshots snapshots)
    {
        var pace = new LookBackPace(snapshots, past, clock, NullLogger<LookBackPace>.Instance);
        await pace.StartAsync(TestContext.Current.CancellationToken);
        // The pause begins when the pace has reached its timer.
        await Task.Delay(200, TestContext.Current.CancellationToken);
        return pace;
    }

    private static EstateSnapshot Snapshot(long version) =>
        SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = StoredEstate.Contents, Version = version };

    private static async Task UntilAsync(Func<bool> happened)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        while (!happened())
        {
            await Task.Delay(20, patience.Token);
        }
    }
}
