using System.CommandLine;

namespace EstateWater.Web.Commands;

/// <summary>Which database file a command works on.</summary>
internal static class DatabaseOption
{
    public const string DefaultPath = "data/estate.db";

    public static Option<string> Create() => new("--database")
    {
        Description = "The database file.",
        HelpName = "FILE",
        DefaultValueFactory = _ => DefaultPath,
    };
}
