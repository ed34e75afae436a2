namespace EstateWater.Data.Store;

/// <summary>A lock on a file beside the database, which the operating system gives back when the process ends, however it ends.</summary>
internal static class MigrationLock
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    public static async Task<IAsyncDisposable> TakeAsync(string database, CancellationToken cancellation)
    {
        if (database is "" or ":memory:")
        {
            // Nobody else can see a database in memory.
            return new MemoryStream();
        }

        for (var tries = Patience / Pause; tries > 0; tries--)
        {
            try
            {
                return new FileStream(database + ".migrating", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(database + ".migrating"))
            {
                await Task.Delay(Pause, cancellation);
            }
        }

        throw new TimeoutException($"Another process has been bringing {database} up to date for {Patience.TotalSeconds:F0} s.");
    }
}
