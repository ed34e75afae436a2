using System.CommandLine;
using EstateWater.Data.Folder;
using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;

namespace EstateWater.Web.Commands;

/// <summary><c>export --to FOLDER</c>: everything the database knows of the estate, as an estate folder.</summary>
public static class ExportCommand
{
    public static Command Create()
    {
        var to = new Option<string>("--to") { Description = "The folder to write: new, empty, or an estate folder to replace.", HelpName = "FOLDER", Required = true };
        var database = DatabaseOption.Create();
        var command = new Command("export", "Writes the estate as a folder of open formats.") { to, database };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetRequiredValue(to),
            parsed.GetRequiredValue(database),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error,
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string folder, string database, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        try
        {
            // A copy: exporting never touches the file, not even to bring it up to date.
            await using var copy = await DatabaseSetup.OpenCopyInMemoryAsync(database, cancellation);
            if (await EstateStore.LoadAsync(copy, cancellation) is not { } contents)
            {
                await error.WriteLineAsync($"{database}: holds no estate; import one first.");
                return ExitCodes.BadInput;
            }

            EstateFolder.Write(contents, folder);
            await output.WriteLineAsync($"Wrote {contents.Estate.Name} to {folder}.");
            return ExitCodes.Done;
        }
        catch (SqliteException failure)
        {
            await error.WriteLineAsync($"{database}: cannot be used as the database: {failure.Message}");
            return ExitCodes.BadInput;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync(failure.Message);
            return ExitCodes.BadInput;
        }
    }
}
