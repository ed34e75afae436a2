using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Tests.Data;

public sealed class DatabaseBackupTests : IAsyncLifetime
{
    private readonly TemporaryFolder folder = new();
    private readonly SmallEstate small = new();
    private EstateDb db = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Database => folder.File("estate.db");

    private string Backup => folder.File("backups/monday.db");

    public async ValueTask InitializeAsync()
    {
        db = DatabaseSetup.Open(Database);
        await DatabaseSetup.MigrateAsync(db, Stop);
        await EstateStore.ImportAsync(db, small.Read().Contents!, Stop);
    }

    public async ValueTask DisposeAsync()
    {
        await db.DisposeAsync();
        SqliteConnection.ClearAllPools();
        folder.Dispose();
        small.Dispose();
    }

    [Fact]
    public async Task A_backup_brings_back_what_was_lost_while_the_program_runs()
    {
        await DatabaseBackup.WriteAsync(Database, Backup, Stop);
        await db.ChamberReadings.ExecuteDeleteAsync(Stop);

        await DatabaseBackup.RestoreAsync(Backup, Database, Stop);

        Assert.Equal(EstateText.Of(small.Read().Contents!), EstateText.Of((await EstateStore.LoadAsync(db, Stop))!));
        await using var before = await DatabaseSetup.OpenCopyInMemoryAsync(Database + ".before-restore", Stop);
        Assert.Equal(0, await before.ChamberReadings.CountAsync(Stop));
        Assert.Equal(2, await before.Blocks.CountAsync(Stop));
    }

    [Fact]
    public async Task A_backup_is_restored_where_no_database_is()
    {
        await DatabaseBackup.WriteAsync(Database, Backup, Stop);
        var elsewhere = folder.File("elsewhere/estate.db");

        await DatabaseBackup.RestoreAsync(Backup, elsewhere, Stop);

        await using var copy = DatabaseSetup.Open(elsewhere);
        Assert.Equal(5, await copy.ChamberReadings.CountAsync(Stop));
    }

    [Fact]
    public async Task A_backup_is_never_written_over()
    {
        await DatabaseBackup.WriteAsync(Database, Backup, Stop);
        var first = await File.ReadAllBytesAsync(Backup, Stop);
        await db.ChamberReadings.ExecuteDeleteAsync(Stop);

        await Assert.ThrowsAsync<IOException>(() => DatabaseBackup.WriteAsync(Database, Backup, Stop));

        Assert.Equal(first, await File.ReadAllBytesAsync(Backup, Stop));
        Assert.Equal([Backup], Directory.EnumerateFiles(folder.File("backups")));
    }

    [Fact]
    public async Task A_damaged_backup_changes_nothing()
    {
        await DatabaseBackup.WriteAsync(Database, Backup, Stop);
        var bytes = await File.ReadAllBytesAsync(Backup, Stop);
        bytes.AsSpan(bytes.Length / 2, 4096).Fill(0xA5);
        await File.WriteAllBytesAsync(Backup, bytes, Stop);

        var refusal = await Record.ExceptionAsync(() => DatabaseBackup.RestoreAsync(Backup, Database, Stop));

        Assert.True(refusal is IOException or SqliteException, refusal?.ToString());
        Assert.Equal(5, await db.ChamberReadings.CountAsync(Stop));
    }

    [Fact]
    public async Task What_is_no_backup_is_refused()
    {
        var text = folder.File("notes.txt");
        await File.WriteAllTextAsync(text, new string('x', 5000), Stop);

        await Assert.ThrowsAsync<SqliteException>(() => DatabaseBackup.RestoreAsync(text, Database, Stop));
        await Assert.ThrowsAsync<FileNotFoundException>(() => DatabaseBackup.RestoreAsync(folder.File("none.db"), Database, Stop));
        await Assert.ThrowsAsync<FileNotFoundException>(() => DatabaseBackup.WriteAsync(folder.File("none.db"), Backup, Stop));
    }
}
