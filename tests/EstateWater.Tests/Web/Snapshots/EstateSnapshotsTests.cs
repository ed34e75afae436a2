using EstateWater.Web.State;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Snapshots;

public sealed class EstateSnapshotsTests
{
    private readonly FakeTimeProvider clock = new(SmallEstate.AsOf);
    private int built;

    [Fact]
    public async Task Readers_at_the_same_time_share_one_snapshot()
    {
        var snapshots = Snapshots();
        var read = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => snapshots.GetAsync(Cancellation)));
        Assert.Single(read.Distinct());
        Assert.Equal(1, built);
    }

    [Fact]
    public async Task A_change_of_the_data_makes_a_new_version()
    {
        var snapshots = Snapshots();
        var before = await snapshots.GetAsync(Cancellation);
        snapshots.Invalidate();
        var after = await snapshots.GetAsync(Cancellation);
        Assert.True(after.Version > before.Version);
    }

    [Fact]
    public async Task After_an_hour_the_plan_looks_from_a_new_moment()
    {
        var snapshots = Snapshots();
        await snapshots.GetAsync(Cancellation);
        clock.Advance(TimeSpan.FromMinutes(60));
        await snapshots.GetAsync(Cancellation);
        Assert.Equal(1, built);
        clock.Advance(TimeSpan.FromSeconds(1));
        await snapshots.GetAsync(Cancellation);
        Assert.Equal(2, built);
    }

    [Fact]
    public async Task Subscribers_hear_once_the_new_snapshot_is_made()
    {
        var snapshots = Snapshots();
        var heard = new TaskCompletionSource<EstateNews>();
        using var subscription = snapshots.Subscribe(heard.SetResult);
        snapshots.Invalidate("A set was confirmed.");
        var news = await heard.Task.WaitAsync(TimeSpan.FromSeconds(10), Cancellation);
        Assert.Equal("A set was confirmed.", news.What);
        Assert.Equal((await snapshots.GetAsync(Cancellation)).Version, news.Version);
    }

    [Fact]
    public async Task Who_needs_no_plan_gets_the_last_snapshot_while_a_new_one_is_made()
    {
        var gate = new TaskCompletionSource();
        var snapshots = new EstateSnapshots(
            async (version, _) =>
            {
                await (version == 1 ? Task.CompletedTask : gate.Task);
                return SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1")) with { Version = version };
            },
            clock);
        await snapshots.GetAsync(Cancellation);
        snapshots.Invalidate();
        Assert.Equal(1, (await snapshots.GetSettledAsync(Cancellation)).Version);
        gate.SetResult();
        await snapshots.GetAsync(Cancellation);
        Assert.Equal(2, (await snapshots.GetSettledAsync(Cancellation)).Version);
    }

    [Fact]
    public async Task Changes_that_come_while_one_is_made_are_made_together()
    {
        var gate = new TaskCompletionSource();
        var snapshots = new EstateSnapshots(
            async (version, _) =>
            {
                Interlocked.Increment(ref built);
                await gate.Task;
                return EstateSnapshot.Empty(clock.GetUtcNow(), version);
            },
            clock);
        var first = snapshots.GetAsync(Cancellation);
        while (Volatile.Read(ref built) == 0)
        {
            await Task.Yield();
        }

        for (var change = 0; change < 20; change++)
        {
            snapshots.Invalidate();
        }

        gate.SetResult();
        Assert.Equal(21, (await snapshots.GetAsync(Cancellation)).Version);
        Assert.Equal(1, (await first).Version);
        Assert.Equal(2, built);
    }

    [Fact]
    public void Who_leaves_is_forgotten()
    {
        var snapshots = Snapshots();
        var subscription = snapshots.Subscribe(_ => { });
        Assert.Equal(1, snapshots.SubscriberCount);
        subscription.Dispose();
        Assert.Equal(0, snapshots.SubscriberCount);
    }

    [Fact]
    public async Task A_failure_reaches_its_readers_and_the_next_reader_tries_again()
    {
        var snapshots = new EstateSnapshots(
            (version, _) => Interlocked.Increment(ref built) == 1
                ? throw new IOException("disk")
                : Task.FromResult(EstateSnapshot.Empty(SmallEstate.AsOf, version)),
            clock);
        await Assert.ThrowsAsync<IOException>(() => snapshots.GetAsync(Cancellation));
        Assert.False((await snapshots.GetAsync(Cancellation)).HasEstate);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private EstateSnapshots Snapshots() => new(
        (version, _) =>
        {
            Interlocked.Increment(ref built);
            return Task.FromResult(EstateSnapshot.Empty(clock.GetUtcNow(), version));
        },
        clock);
}
