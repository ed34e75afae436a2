using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Week;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Features.Week;
using EstateWater.Web.State;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Sets;

/// <summary>A database file with one published plan of two sets, and the services that the pages ask.</summary>
internal sealed class PublishedEstate : IAsyncDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("estate-water-").FullName;

    /// <summary>How often a snapshot was made.</summary>
    public int SnapshotsMade { get; private set; }

    /// <summary>The sets' numbers in the store.</summary>
    public IReadOnlyList<int> SetIds { get; private set; } = [];

    public FakeTimeProvider Clock { get; } = new(Samples.AsOf);

    public static async Task<PublishedEstate> CreateAsync(CancellationToken cancellation)
    {
        var estate = new PublishedEstate();
        await using var db = estate.Open();
        await DatabaseSetup.MigrateAsync(db, cancellation);
        db.Sources.AddRange(SampleEstate.Contents.Sources);
        db.Valves.AddRange(new Valve { Code = "V01", SourceCode = "bore" }, new Valve { Code = "V02", SourceCode = "bore" });
        await db.SaveChangesAsync(cancellation);
        var sets = Samples.Plan().Sets.Select(s => new PublishedSet
        {
            ValveCode = s.Valve,
            SourceCode = s.Source,
            Start = s.Start,
            End = s.End,
            Hours = s.Hours,
            FlowM3PerH = s.FlowM3PerH,
        });
        var plan = await PublishedPlans.PublishAsync(db, Samples.AsOf, "{}", sets.ToList(), "Ana", null, Samples.AsOf, cancellation);
        estate.SetIds = plan.Sets.Select(s => s.Id).ToList();
        return estate;
    }

    /// <summary>A context on the database; the caller disposes it.</summary>
    public EstateDb Open() => DatabaseSetup.Open(Path.Combine(folder, "estate.db"));

    public void AddTo(IServiceCollection services)
    {
        services.AddEstateDatabase(Path.Combine(folder, "estate.db"));
        services.AddSingleton<TimeProvider>(Clock);
        services.AddSingleton(_ => new EstateSnapshots(SnapshotAsync, Clock));
        services.AddScoped<SetsQuery>();
        services.AddScoped<WeekPlanner>();
    }

    public ValueTask DisposeAsync()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    private async Task<EstateSnapshot> SnapshotAsync(long version, CancellationToken cancellation)
    {
        SnapshotsMade++;
        await using var db = Open();
        return new EstateSnapshot
        {
            Contents = SampleEstate.Contents,
            Plan = Samples.Plan(),
            Version = version,
            Published = await db.PublishedPlans.AsNoTracking().Include(p => p.Sets).OrderBy(p => p.Id).LastAsync(cancellation),
        };
    }
}
