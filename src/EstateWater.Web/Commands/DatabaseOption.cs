using System.CommandLine;
using EstateWater.Web.Hosting;

namespace EstateWater.Web.Commands;

/// <summary>Which database file a command works on.</summary>
internal static class DatabaseOption
{
    public static Option<string> Create() => new("--database")
    {
        Description = "The database file.",
        HelpName = "FILE",
        DefaultValueFactory = _ => ServeOptions.DefaultDatabase,
    };
}
