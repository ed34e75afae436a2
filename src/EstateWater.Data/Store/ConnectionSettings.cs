using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace EstateWater.Data.Store;

/// <summary>Settings that SQLite keeps per connection: a confirmed set survives a power cut, readers never wait for a writer.</summary>
internal sealed class ConnectionSettings : DbConnectionInterceptor
{
    public static readonly ConnectionSettings Instance = new();

    private const string Settings = "PRAGMA busy_timeout = 10000; PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = Command(connection);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = Command(connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    private static DbCommand Command(DbConnection connection)
    {
        var command = connection.CreateCommand();

        // Write-ahead logging is a change of the file, which a read-only connection may not make.
        var isReadOnly = new SqliteConnectionStringBuilder(connection.ConnectionString).Mode == SqliteOpenMode.ReadOnly;
        command.CommandText = isReadOnly ? Settings : Settings + " PRAGMA journal_mode = WAL;";
        return command;
    }
}
