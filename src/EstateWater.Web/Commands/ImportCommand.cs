using System.CommandLine;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;

namespace EstateWater.Web.Commands;

/// <summary><c>import --data FOLDER</c>: an estate folder into the database, whole or not at all.</summary>
public static class ImportCommand
{
    public static Command Create()
    {
        var data = new Option<string>("--data") { Description = "The estate folder.", HelpName = "FOLDER", Required = true };
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would change, and write nothing." };
        var database = DatabaseOption.Create();
        var command = new Command("import", "Brings an estate folder into the database.") { data, dryRun, database };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetRequiredValue(data),
            parsed.GetValue(dryRun),
            parsed.GetRequiredValue(database),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error,
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string folder, bool dryRun, string database, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        var (contents, defects) = EstateFolder.Read(folder);
        if (contents is null)
        {
            return await Refusal.WriteAsync(error, defects);
        }

        try
        {
            var result = dryRun
                ? await CompareAsync(database, contents, cancellation)
                : await ImportAsync(database, contents, cancellation);
            await WriteAsync(output, result, dryRun);
            return ExitCodes.Done;
        }
        catch (SqliteException failure)
        {
            await error.WriteLineAsync($"{database}: cannot be used as the database: {failure.Message}");
            return ExitCodes.BadInput;
        }
    }

    private static async Task<ImportResult> ImportAsync(string database, EstateContents contents, CancellationToken cancellation)
    {
        await using var db = DatabaseSetup.Open(database);
        await DatabaseSetup.MigrateAsync(db, cancellation);
        return await EstateStore.ImportAsync(db, contents, new ImportStamp("Command line", TimeProvider.System.GetUtcNow()), cancellation);
    }

    private static async Task<ImportResult> CompareAsync(string database, EstateContents contents, CancellationToken cancellation)
    {
        await using var copy = await DatabaseSetup.OpenCopyInMemoryAsync(database, cancellation);
        return await EstateStore.CompareAsync(copy, contents, cancellation);
    }

    private static async Task WriteAsync(TextWriter output, ImportResult result, bool dryRun)
    {
        foreach (var file in result.Files)
        {
            var kept = file.Kept == 0 ? "" : $", {file.Kept} kept as confirmed";
            await output.WriteLineAsync($"{file.File}: {file.New} new, {file.Changed} changed, {file.Unchanged} unchanged{kept}");
        }

        await output.WriteLineAsync(
            dryRun ? "Nothing was written." : result.ChangedNothing ? "Everything was there already." : "Imported.");
    }
}
