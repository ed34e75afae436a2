namespace EstateWater.Data.Folder;

/// <summary>Finds files whose names are nearly ours: passing over <c>weather_daily.csv</c> in silence would plan without weather.</summary>
internal static class MisnamedFiles
{
    public static void Report(FolderScan scan, string folder, string[] names)
    {
        var byLetters = names.ToDictionary(Letters);
        foreach (var name in Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal))
        {
            if (!names.Contains(name) && byLetters.TryGetValue(Letters(name), out var meant) && !File.Exists(Path.Combine(folder, meant)))
            {
                scan.Report(name, 1, Defect.WholeFile, $"unknown file; rename it {meant}");
            }
        }
    }

    private static string Letters(string name) =>
        string.Concat(Path.GetFileNameWithoutExtension(name).Where(char.IsLetter)).ToLowerInvariant().TrimEnd('s')
        + Path.GetExtension(name).ToLowerInvariant();
}
