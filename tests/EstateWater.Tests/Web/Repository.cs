namespace EstateWater.Tests.Web;

/// <summary>Where the sources lie.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    private static string Find(DirectoryInfo folder) =>
        File.Exists(Path.Combine(folder.FullName, "EstateWater.sln"))
            ? folder.FullName
            : Find(folder.Parent ?? throw new DirectoryNotFoundException("No folder above the tests holds EstateWater.sln."));
}
