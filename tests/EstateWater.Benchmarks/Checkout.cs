namespace EstateWater.Benchmarks;

/// <summary>Where things lie in the repository.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    /// <summary>The demo estate's folder.</summary>
    public static string Seed => Path.Combine(Root, "seed");

    /// <summary>The instant at which the demo's clock stands.</summary>
    public static string DemoInstant => File.ReadAllText(Path.Combine(Seed, "demo-clock.txt")).Trim();

    /// <summary>The program's project.</summary>
    public static string WebProject => Path.Combine(Root, "src", "EstateWater.Web");

    /// <summary>The program as built for release, which building this project does too.</summary>
    public static string Program => Path.Combine(WebProject, "bin", "Release", "net10.0", "EstateWater.Web.dll");

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
