using System.CommandLine;
using EstateWater.Web.Commands;

namespace EstateWater.Web;

/// <summary>The commands of the program; each feature adds its own.</summary>
public static class CommandLine
{
    /// <summary>Runs a command and gives its exit code: 0 done, 2 bad input.</summary>
    public static Task<int> Run(string[] args)
    {
        var root = new RootCommand("Plans the irrigation of a wine estate from its readings, soil, canopy, weather and water.");
        root.Subcommands.Add(ImportCommand.Create());
        root.Subcommands.Add(ExportCommand.Create());
        root.Subcommands.Add(BackupCommand.CreateBackup());
        root.Subcommands.Add(BackupCommand.CreateRestore());
        return root.Parse(args).InvokeAsync();
    }
}
