namespace EstateWater.Data.Folder;

/// <summary>Writes a folder beside its place and then swaps it in, so that nobody ever finds it half written.</summary>
internal static class FolderSwap
{
    public static void Write(string folder, string[] ourFiles, Action<string> write)
    {
        var target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        RefuseForeign(target, ourFiles);
        var parent = Path.GetDirectoryName(target) ?? throw new IOException($"'{folder}' cannot be written: name a folder below the root.");
        Directory.CreateDirectory(parent);
        var fresh = Path.Combine(parent, $".{Path.GetFileName(target)}.{Guid.NewGuid():N}");
        Directory.CreateDirectory(fresh);
        try
        {
            write(fresh);
            Swap(fresh, target, ourFiles);
        }
        finally
        {
            if (Directory.Exists(fresh))
            {
                Directory.Delete(fresh, recursive: true);
            }
        }
    }

    private static void RefuseForeign(string target, string[] ourFiles)
    {
        if (File.Exists(target))
        {
            throw new IOException($"'{target}' is a file; name a folder.");
        }

        if (Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any() && !File.Exists(Path.Combine(target, ourFiles[0])))
        {
            throw new IOException($"'{target}' holds something else than an estate; name an empty folder or one that holds {ourFiles[0]}.");
        }
    }

    private static void Swap(string fresh, string target, string[] ourFiles)
    {
        if (!Directory.Exists(target))
        {
            Directory.Move(fresh, target);
            return;
        }

        var old = fresh + ".old";
        Directory.Move(target, old);
        try
        {
            Directory.Move(fresh, target);
        }
        catch
        {
            Directory.Move(old, target);
            throw;
        }

        // What is not ours, a note beside the data for example, stays.
        foreach (var entry in Directory.EnumerateFileSystemEntries(old).Where(e => !ourFiles.Contains(Path.GetFileName(e))).ToList())
        {
            Directory.Move(entry, Path.Combine(target, Path.GetFileName(entry)));
        }

        Directory.Delete(old, recursive: true);
    }
}
