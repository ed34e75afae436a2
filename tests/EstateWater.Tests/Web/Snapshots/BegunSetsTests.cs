using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Planning;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Hosting;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Snapshots;

/// <summary>Published again before last night's sets were confirmed, the plan still knows of last night's water.</summary>
public sealed class BegunSetsTests
{
    private static readonly DateTimeOffset LastNight = SmallEstate.AsOf.AddHours(-6);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Water_of_an_older_plan_counts_until_somebody_says_that_it_did_not_run()
    {
        await using var host = await RunningHost.StartAsync(StoredEstate.Contents);
        var databases = host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>();
        await using var db = await databases.CreateDbContextAsync(Cancellation);
        var older = await PublishAsync(db, LastNight, SmallEstate.AsOf.AddHours(-10));
        await PublishAsync(db, SmallEstate.AsOf.AddHours(14), SmallEstate.AsOf.AddHours(-1));
        var builder = new SnapshotBuilder(databases, new EstateClock(SmallEstate.AsOf));

        var before = await builder.BuildAsync(1, Cancellation);
        Assert.Contains(new AppliedSet(LastNight, 4, null), Applied(before));
        Assert.Same(before.Fitted, (await builder.BuildAsync(2, Cancellation)).Fitted);

        var entry = new ConfirmationEntry(Guid.NewGuid(), older.Sets[0].Id, 0, null, "Ben", null, SmallEstate.AsOf) { NotRun = NotRunReason.PumpDown };
        Assert.Equal(ConfirmationStatus.Stored, (await Confirmations.ConfirmAsync(db, entry, SmallEstate.AsOf, Cancellation)).Status);
        Assert.DoesNotContain(Applied(await builder.BuildAsync(3, Cancellation)), a => a.StartedAt == LastNight);
    }

    private static IReadOnlyList<AppliedSet> Applied(EstateSnapshot snapshot) => snapshot.Fitted!.Request.Valves.Single(v => v.Code == "V1").Applied;

    private static Task<PublishedPlan> PublishAsync(EstateDb db, DateTimeOffset start, DateTimeOffset at)
    {
        var set = new PublishedSet { ValveCode = "V1", SourceCode = "dam", Start = start, End = start.AddHours(4), Hours = 4, FlowM3PerH = 20 };
        return PublishedPlans.PublishAsync(db, at, "{}", [set], "Ana", null, at, Cancellation);
    }
}
