using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Data;

public sealed class DatabaseSetupTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Database => folder.File("sub/estate.db");

    [Fact]
    public async Task The_migrations_are_those_of_the_model()
    {
        await using var db = DatabaseSetup.Open(Database);

        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task A_registered_database_is_durable_and_keeps_its_references()
    {
        await using var services = new ServiceCollection().AddEstateDatabase(Database).BuildServiceProvider();
        await using var db = await services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Stop);
        await DatabaseSetup.MigrateAsync(db, Stop);

        Assert.Equal("wal", await Pragma<string>(db, "journal_mode"));
        Assert.Equal(2, await Pragma<long>(db, "synchronous"));
        Assert.Equal(1, await Pragma<long>(db, "foreign_keys"));
        Assert.Equal(10_000, await Pragma<long>(db, "busy_timeout"));
        db.Valves.Add(new Valve { Code = "V1", SourceCode = "none" });
        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Stop));
    }

    [Fact]
    public async Task Processes_that_start_at_once_migrate_once()
    {
        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(
            async () =>
            {
                await using var db = DatabaseSetup.Open(Database);
                await DatabaseSetup.MigrateAsync(db, Stop);
                Assert.Empty(await db.Database.GetPendingMigrationsAsync(Stop));
            },
            Stop)));
    }

    [Fact]
    public async Task A_migration_that_died_does_not_block_the_next()
    {
        await using (var dead = DatabaseSetup.Open(Database))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Database)!);
            await dead.Database.ExecuteSqlAsync($"CREATE TABLE __EFMigrationsLock (Id INTEGER NOT NULL PRIMARY KEY, Timestamp TEXT NOT NULL)", Stop);
            await dead.Database.ExecuteSqlAsync($"INSERT INTO __EFMigrationsLock VALUES (1, '2024-01-01 00:00:00+00:00')", Stop);
        }

        await using var db = DatabaseSetup.Open(Database);
        await DatabaseSetup.MigrateAsync(db, Stop).WaitAsync(TimeSpan.FromSeconds(20), Stop);

        Assert.Equal(0, await db.Blocks.CountAsync(Stop));
    }

    [Fact]
    public async Task A_database_of_a_newer_program_is_refused()
    {
        await using var db = DatabaseSetup.Open(Database);
        await DatabaseSetup.MigrateAsync(db, Stop);
        await db.Database.ExecuteSqlAsync($"INSERT INTO __EFMigrationsHistory VALUES ('99990101000000_Later', '99')", Stop);

        var refusal = await Assert.ThrowsAsync<InvalidOperationException>(() => DatabaseSetup.MigrateAsync(db, Stop));

        Assert.Contains("99990101000000_Later", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlines_come_back_exact_and_only_a_moved_corner_is_a_change()
    {
        using var small = new SmallEstate();
        var contents = small.Read().Contents!;
        await using var db = DatabaseSetup.Open(Database);
        await DatabaseSetup.MigrateAsync(db, Stop);
        await EstateStore.ImportAsync(db, contents, Stop);

        var block = await db.Blocks.SingleAsync(b => b.Code == "B2", Stop);

        Assert.Equal(4326, block.Outline.SRID);
        Assert.True(block.Outline.EqualsExact(contents.Blocks[1].Outline));
        db.ChangeTracker.DetectChanges();
        Assert.Equal(EntityState.Unchanged, db.Entry(block).State);
        block.Outline.GetGeometryN(0).Coordinates[1].X += 1e-9;
        block.Outline.GeometryChanged();
        db.ChangeTracker.DetectChanges();
        Assert.Equal(EntityState.Modified, db.Entry(block).State);
    }

    [Fact]
    public async Task A_copy_in_memory_leaves_the_file_alone()
    {
        using var small = new SmallEstate();
        await using (var db = DatabaseSetup.Open(Database))
        {
            await DatabaseSetup.MigrateAsync(db, Stop);
            await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);
        }

        await using (var copy = await DatabaseSetup.OpenCopyInMemoryAsync(Database, Stop))
        {
            await copy.ChamberReadings.ExecuteDeleteAsync(Stop);
        }

        await using var again = DatabaseSetup.Open(Database);
        Assert.Equal(5, await again.ChamberReadings.CountAsync(Stop));
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Dispose();
    }

    private static async Task<T> Pragma<T>(EstateDb db, string name)
    {
        await db.Database.OpenConnectionAsync(Stop);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"PRAGMA {name}";
        return (T)(await command.ExecuteScalarAsync(Stop))!;
    }
}
