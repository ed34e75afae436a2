using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Data.Store;

/// <summary>Opens the estate's database file and keeps its tables up to date.</summary>
public static class DatabaseSetup
{
    /// <summary>Registers an <see cref="IDbContextFactory{TContext}"/> of <see cref="EstateDb"/> on a file.</summary>
    public static IServiceCollection AddEstateDatabase(this IServiceCollection services, string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        return services.AddDbContextFactory<EstateDb>(options => Configure(options, path));
    }

    /// <summary>Opens a database without a service container; the caller disposes it.</summary>
    public static EstateDb Open(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var options = new DbContextOptionsBuilder<EstateDb>();
        Configure(options, path);
        return new(options.Options);
    }

    /// <summary>
    /// An up-to-date copy in memory of a database file, or an empty database where there is no file. The file is only read.
    /// The copy lives as long as the context; the caller disposes it.
    /// </summary>
    /// <exception cref="SqliteException">The file is no database.</exception>
    public static async Task<EstateDb> OpenCopyInMemoryAsync(string? path = null, CancellationToken cancellation = default)
    {
        var memory = new SqliteConnection("Data Source=:memory:");
        var options = new DbContextOptionsBuilder<EstateDb>();
        options.UseSqlite(memory, contextOwnsConnection: true).AddInterceptors(ConnectionSettings.Instance);
        var copy = new EstateDb(options.Options);
        try
        {
            // Opened by hand, it stays open: a database in memory goes with its connection.
            await copy.Database.OpenConnectionAsync(cancellation);
            if (path is not null && File.Exists(path))
            {
                await using var file = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
                await file.OpenAsync(cancellation);
                file.BackupDatabase(memory);
            }

            await MigrateAsync(copy, cancellation);
            return copy;
        }
        catch
        {
            await copy.DisposeAsync();
            throw;
        }
    }

    /// <summary>Brings the tables up to date, creating the file when it is not there. Safe when several processes start at once.</summary>
    /// <exception cref="InvalidOperationException">A newer version of the program made the database.</exception>
    /// <exception cref="TimeoutException">Another process has been bringing it up to date for too long.</exception>
    public static async Task MigrateAsync(EstateDb db, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        var file = db.Database.GetDbConnection().DataSource;
        if (Path.GetDirectoryName(file) is { Length: > 0 } directory)
        {
            Directory.CreateDirectory(directory);
        }

        await using var ours = await MigrationLock.TakeAsync(file, cancellation);
        var known = db.Database.GetMigrations().ToHashSet();
        var unknown = (await db.Database.GetAppliedMigrationsAsync(cancellation)).FirstOrDefault(m => !known.Contains(m));
        if (unknown is not null)
        {
            throw new InvalidOperationException($"{file} was made by a newer version of the program ({unknown}); use that version.");
        }

        if ((await db.Database.GetPendingMigrationsAsync(cancellation)).Any())
        {
            await ClearStaleLockAsync(db, cancellation);
            await db.Database.MigrateAsync(cancellation);
        }
    }

    private static void Configure(DbContextOptionsBuilder options, string path) => options
        .UseSqlite(new SqliteConnectionStringBuilder { DataSource = path }.ToString())
        .AddInterceptors(ConnectionSettings.Instance);

    // A process that died while migrating leaves a row that EF waits for without end. Nobody else can be
    // migrating while we hold our own lock, so the row is stale.
    private static async Task ClearStaleLockAsync(EstateDb db, CancellationToken cancellation)
    {
        var tables = db.Database.SqlQuery<int>($"SELECT count(*) AS Value FROM sqlite_master WHERE name = '__EFMigrationsLock'");
        if (await tables.SingleAsync(cancellation) > 0)
        {
            await db.Database.ExecuteSqlAsync($"DELETE FROM __EFMigrationsLock", cancellation);
        }
    }
}
