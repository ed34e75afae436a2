using System.Diagnostics;
using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A phone's own browser, whose store outlives it: closed, or killed as a phone kills it.</summary>
internal sealed class PhoneStore(Browser browser) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("estate-water-phone-").FullName;

    /// <summary>Starts it with what it stored before.</summary>
    public Task<IBrowserContext> StartAsync(Uri host) => browser.PhoneWithStoreAsync(host, folder);

    /// <summary>Ends its processes at once: nothing of it may still write to its store.</summary>
    public void Kill()
    {
        foreach (var id in Ours())
        {
            using var process = Process.GetProcessById(id);
            process.Kill();
            process.WaitForExit();
        }
    }

    public void Dispose()
    {
        Kill();
        Directory.Delete(folder, recursive: true);
    }

    // Only the browser itself names the store; its helpers end with it.
    private List<int> Ours() =>
    [
        .. Directory.GetDirectories("/proc")
            .Select(Path.GetFileName)
            .Where(name => int.TryParse(name, out _))
            .Where(name => CommandOf(name!).Contains($"--user-data-dir={folder}", StringComparison.Ordinal) && !CommandOf(name!).Contains("--type=", StringComparison.Ordinal))
            .Select(name => int.Parse(name!, System.Globalization.CultureInfo.InvariantCulture)),
    ];

    private static string CommandOf(string process)
    {
        try
        {
            return File.ReadAllText($"/proc/{process}/cmdline");
        }
        catch (IOException)
        {
            // It has ended meanwhile.
            return "";
        }
    }
}
