using EstateWater.Data.Model;
using EstateWater.Planning.Accuracy;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Plan;
using EstateWater.Web.State;
using Microsoft.Extensions.Logging.Abstractions;

namespace EstateWater.Tests.Web.Accuracy;

public sealed class PastOutlooksTests : IDisposable
{
    private readonly PastOutlooks past = new(NullLogger<PastOutlooks>.Instance);

    [Fact]
    public async Task Whoever_asks_is_answered_at_once_and_the_report_comes_later()
    {
        Assert.Equal(LookBackPhase.NotAsked, past.Now.Phase);
        Assert.Equal(LookBackPhase.Working, past.Ask(Snapshot(1)).Phase);
        var known = await DoneAsync();
        Assert.Equal(LookBackPhase.Known, known.Phase);
        Assert.Equal(new HindcastProgress(8, 8), known.Progress);
        Assert.Equal(Expected(), known.Report!.Held);
    }

    [Fact]
    public async Task The_report_is_kept_while_the_data_stand()
    {
        past.Ask(Snapshot(1));
        var known = await DoneAsync();
        Assert.Same(known, past.Ask(Snapshot(1)));
        Assert.Same(known, past.Ask(Snapshot(2)));
    }

    [Fact]
    public async Task A_new_reading_begins_the_work_anew_and_the_report_before_stays_until_it_is_done()
    {
        past.Ask(Snapshot(1, StoredEstate.Contents with { ChamberReadings = [.. StoredEstate.Contents.ChamberReadings.Where(r => r.BlockCode == "B1")] }));
        var before = (await DoneAsync()).Report!;
        Assert.Null(before.Block("B2", 1));
        var again = past.Ask(Snapshot(2));
        Assert.Equal(LookBackPhase.Working, again.Phase);
        Assert.Same(before, again.Report);
        Assert.NotNull((await DoneAsync()).Report!.Block("B2", 1));
    }

    [Fact]
    public async Task Stopped_work_waits_to_be_started()
    {
        past.Ask(Snapshot(1));
        past.Stop();
        Assert.Equal(LookBackPhase.Stopped, past.Now.Phase);
        Assert.Equal(LookBackPhase.Stopped, past.Ask(Snapshot(2)).Phase);
        past.Start(Snapshot(2));
        var known = await DoneAsync();
        Assert.Equal(LookBackPhase.Known, known.Phase);
        past.Stop();
        Assert.Same(known, past.Now);
    }

    [Fact]
    public async Task A_failure_is_told_and_not_tried_again_by_itself()
    {
        // No database holds such a block; what matters is that a failure in the background is seen.
        past.Ask(Snapshot(1, StoredEstate.Contents with { Valves = [] }));
        var failed = await DoneAsync();
        Assert.Equal(LookBackPhase.Failed, failed.Phase);
        Assert.Contains("V1", failed.Problem, StringComparison.Ordinal);
        Assert.Same(failed, past.Ask(Snapshot(2)));
        past.Start(Snapshot(2));
        Assert.Equal(LookBackPhase.Known, (await DoneAsync()).Phase);
    }

    [Fact]
    public async Task The_last_report_is_there_at_once_after_a_restart_until_it_is_done_anew()
    {
        var folder = Directory.CreateTempSubdirectory("estate-water-");
        try
        {
            var kept = KeptLookBack.Beside(Path.Combine(folder.FullName, "estate.db"));
            using (var before = new PastOutlooks(NullLogger<PastOutlooks>.Instance, kept))
            {
                before.Ask(Snapshot(1));
                await DoneAsync(before);
                // The report is told before it is on the disk.
                await WaitAsync(() => kept.Recall("Test estate") is null);
            }

            using var after = new PastOutlooks(NullLogger<PastOutlooks>.Instance, kept);
            var known = after.For(Snapshot(1));
            Assert.Equal((LookBackPhase.NotAsked, (DateTimeOffset?)SmallEstate.AsOf), (known.Phase, known.AsOf));
            Assert.Equal(Expected(), known.Report!.Held);
            var working = after.Ask(Snapshot(1));
            Assert.True(working.IsWorking);
            Assert.Same(known.Report, working.Report);
            await DoneAsync(after);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void What_was_kept_of_another_estate_or_is_spoilt_counts_for_nothing()
    {
        var folder = Directory.CreateTempSubdirectory("estate-water-");
        try
        {
            var kept = KeptLookBack.Beside(Path.Combine(folder.FullName, "estate.db"));
            Assert.Null(kept.Recall("Test estate"));
            kept.Keep("Other estate", SmallEstate.AsOf, new AccuracyReport([]));
            Assert.NotNull(kept.Recall("Other estate"));
            Assert.Null(kept.Recall("Test estate"));
            File.WriteAllText(Path.Combine(folder.FullName, "estate.look-back.json"), "{ half");
            Assert.Null(kept.Recall("Other estate"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public void Dispose() => past.Dispose();

    private static EstateSnapshot Snapshot(long version, EstateContents? contents = null) =>
        SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = contents ?? StoredEstate.Contents, Version = version };

    private static IReadOnlyList<HeldAgainst> Expected() => Hindcast.Run(
        (asOf, days) => PastKnowledge.At(StoredEstate.Contents, asOf, days),
        PlanRequests.From(StoredEstate.Contents, SmallEstate.AsOf),
        AccuracyReport.Leads,
        cancellation: TestContext.Current.CancellationToken);

    private Task<LookBack> DoneAsync() => DoneAsync(past);

    private static async Task<LookBack> DoneAsync(PastOutlooks past)
    {
        await WaitAsync(() => past.Now.IsWorking);
        return past.Now;
    }

    private static async Task WaitAsync(Func<bool> goesOn)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        while (goesOn())
        {
            await Task.Delay(10, patience.Token);
        }
    }
}
