using System.Globalization;
using EstateWater.Data.Folder;
using EstateWater.Data.Store;

namespace EstateWater.Web.Hosting;

/// <summary>Brings the database up to date before anyone is served.</summary>
internal static class DataPreparation
{
    /// <summary>The demo estate's folder, laid beside the program when it is built.</summary>
    public static string DemoFolder => Path.Combine(AppContext.BaseDirectory, "seed");

    /// <summary>The instant at which the demo's clock stands.</summary>
    public static DateTimeOffset DemoInstant =>
        DateTimeOffset.Parse(File.ReadAllText(Path.Combine(DemoFolder, "demo-clock.txt")).Trim(), CultureInfo.InvariantCulture);

    /// <summary>Migrates, and imports what the options name. Gives the exit code.</summary>
    public static async Task<int> RunAsync(ServeOptions options, TextWriter errors, CancellationToken cancellation)
    {
        var folder = options.DataFolder ?? (options.Demo ? DemoFolder : null);
        var reading = folder is null ? null : EstateFolder.Read(folder);
        if (reading is { Contents: null })
        {
            return await Refusal.WriteAsync(errors, reading.Defects);
        }

        await using var db = DatabaseSetup.Open(options.Database);
        await DatabaseSetup.MigrateAsync(db, cancellation);
        if (reading?.Contents is { } contents)
        {
            var now = options.AsOf ?? (options.Demo ? DemoInstant : TimeProvider.System.GetUtcNow());
            await EstateStore.ImportAsync(db, contents, new ImportStamp("Start of the program", now), cancellation);
        }

        return ExitCodes.Done;
    }
}
