using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>One file that holds the whole database at one moment, taken and put back while the program runs.</summary>
public static class DatabaseBackup
{
    /// <summary>Writes a backup; it is checked before it gets its name.</summary>
    /// <exception cref="IOException">The database is not there, or the file is there already.</exception>
    /// <exception cref="SqliteException">The database cannot be read.</exception>
    public static async Task WriteAsync(string database, string file, CancellationToken cancellation = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(database);
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        RequireDatabase(database);
        if (File.Exists(file))
        {
            throw new IOException($"'{file}' is there already; name a new file.");
        }

        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        var unfinished = file + ".unfinished";
        File.Delete(unfinished);
        try
        {
            await using (var connection = OpenReadOnly(database))
            {
                await ExecuteAsync(connection, "VACUUM INTO $file", cancellation, ("$file", unfinished));
            }

            await RequireSoundAsync(unfinished, cancellation);
            FlushToDisk(unfinished);
            File.Move(unfinished, file);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    /// <summary>Puts a backup in place of what the database holds, whole or not at all; that is kept beside it as <c>.before-restore</c>.</summary>
    /// <exception cref="IOException">The backup is not there, is damaged or holds no estate.</exception>
    /// <exception cref="SqliteException">The file is no database.</exception>
    /// <exception cref="InvalidOperationException">A newer version of the program made the backup.</exception>
    public static async Task RestoreAsync(string file, string database, CancellationToken cancellation = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        ArgumentException.ThrowIfNullOrWhiteSpace(database);
        RequireDatabase(file);
        await RequireSoundAsync(file, cancellation);
        await using var backup = await DatabaseSetup.OpenCopyInMemoryAsync(file, cancellation);
        if (!await backup.Estates.AnyAsync(cancellation))
        {
            throw new IOException($"'{file}' holds no estate.");
        }

        if (File.Exists(database))
        {
            var before = database + ".before-restore";
            File.Delete(before);
            await WriteAsync(database, before, cancellation);
        }

        // Page by page in one transaction: a running program sees the old estate or the new one.
        await using var db = DatabaseSetup.Open(database);
        await DatabaseSetup.MigrateAsync(db, cancellation);
        await db.Database.OpenConnectionAsync(cancellation);
        ((SqliteConnection)backup.Database.GetDbConnection()).BackupDatabase((SqliteConnection)db.Database.GetDbConnection());
    }

    private static void RequireDatabase(string file)
    {
        if (!File.Exists(file))
        {
            throw new FileNotFoundException($"'{file}' is not there.", file);
        }
    }

    private static async Task RequireSoundAsync(string file, CancellationToken cancellation)
    {
        await using var connection = OpenReadOnly(file);
        if (await ExecuteAsync(connection, "PRAGMA integrity_check", cancellation) is not "ok")
        {
            throw new IOException($"'{file}' is damaged.");
        }
    }

    private static SqliteConnection OpenReadOnly(string file)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }

    private static async Task<object?> ExecuteAsync(SqliteConnection connection, string sql, CancellationToken cancellation, params (string Name, string Value)[] parameters)
    {
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Every text is a constant of this class.
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach (var (name, value) in parameters)
        {
            command.Parameters.AddWithValue(name, value);
        }

        return await command.ExecuteScalarAsync(cancellation);
    }

    private static void FlushToDisk(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite);
        stream.Flush(flushToDisk: true);
    }
}
