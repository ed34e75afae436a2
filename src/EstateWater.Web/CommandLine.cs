using System.CommandLine;
using EstateWater.Web.Commands;

namespace EstateWater.Web;

/// <summary>The commands of the program; each feature adds its own.</summary>
public static class CommandLine
{
    /// <summary>Runs a command and gives its exit code: 0 done, 2 bad input.</summary>
    public static Task<int> Run(string[] args)
    {
        var root = new RootCommand("Plans the irrigation of a wine estate from its readings, soil, canopy, weather and water.")
        {
            ServeCommand.Create(),
            PlanCommand.Create(),
            ImportCommand.Create(),
            ExportCommand.Create(),
            AccuracyCommand.Create(),
            BackupCommand.CreateBackup(),
            BackupCommand.CreateRestore(),
            NewPasswordCommand.Create(),
        };
        var parsed = root.Parse(WithDefaultCommand(args));
        return parsed.Errors.Count == 0 ? parsed.InvokeAsync() : Refusal.WriteAsync(parsed.InvocationConfiguration.Error, parsed.Errors.Select(e => e.Message));
    }

    /// <summary>Serving is what the program does when no command is named.</summary>
    internal static string[] WithDefaultCommand(string[] args)
    {
        var namesCommand = args is [var first, ..] && (!first.StartsWith('-') || first is "-h" or "-?" or "--help" or "--version");
        return namesCommand ? args : [ServeCommand.Name, .. args];
    }
}
