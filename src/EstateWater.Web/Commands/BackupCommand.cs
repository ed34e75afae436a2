using System.CommandLine;
using EstateWater.Data.Store;
using Microsoft.Data.Sqlite;

namespace EstateWater.Web.Commands;

/// <summary><c>backup --to FILE</c> and <c>restore --from FILE</c>: the whole database as one file.</summary>
public static class BackupCommand
{
    public static Command CreateBackup()
    {
        var to = new Option<string>("--to") { Description = "The backup to write; it must not be there yet.", HelpName = "FILE", Required = true };
        var database = DatabaseOption.Create();
        var command = new Command("backup", "Writes the whole database to one file, also while the program runs.") { to, database };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed,
            () => DatabaseBackup.WriteAsync(parsed.GetRequiredValue(database), parsed.GetRequiredValue(to), cancellation),
            $"Wrote {parsed.GetRequiredValue(to)}."));
        return command;
    }

    public static Command CreateRestore()
    {
        var from = new Option<string>("--from") { Description = "The backup.", HelpName = "FILE", Required = true };
        var database = DatabaseOption.Create();
        var command = new Command("restore", "Puts a backup in place of what the database holds, which is kept beside it as .before-restore.") { from, database };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed,
            () => DatabaseBackup.RestoreAsync(parsed.GetRequiredValue(from), parsed.GetRequiredValue(database), cancellation),
            $"Restored {parsed.GetRequiredValue(from)}."));
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parsed, Func<Task> work, string done)
    {
        try
        {
            await work();
            await parsed.InvocationConfiguration.Output.WriteLineAsync(done);
            return ExitCodes.Done;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or SqliteException or InvalidOperationException)
        {
            await parsed.InvocationConfiguration.Error.WriteLineAsync(failure.Message);
            return ExitCodes.BadInput;
        }
    }
}
