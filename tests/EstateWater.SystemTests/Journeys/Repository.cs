namespace EstateWater.SystemTests.Journeys;

/// <summary>Where things lie in the repository.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    /// <summary>The demo estate's folder.</summary>
    public static string Seed { get; } = Path.Combine(Root, "seed");

    /// <summary>The program, as built in the configuration of these tests.</summary>
    public static string Program
    {
        get
        {
            var configuration = AppContext.BaseDirectory.Contains($"{Path.DirectorySeparatorChar}Release{Path.DirectorySeparatorChar}") ? "Release" : "Debug";
            return Path.Combine(Root, "src", "EstateWater.Web", "bin", configuration, "net10.0", "EstateWater.Web.dll");
        }
    }

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "EstateWater.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException($"No EstateWater.sln above {AppContext.BaseDirectory}.");
    }
}
