using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The real program in its own process, serving the demo estate from a new database on a free port: one a test class, so that none finds what another confirmed.</summary>
public partial class RunningHost : IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private const int MostFailureLines = 40;

    private readonly string folder = Directory.CreateTempSubdirectory("estate-water-").FullName;
    private readonly StringBuilder said = new();
    private Process? process;

    private readonly TaskCompletionSource<string> code = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>The code for the first manager, as it stands at the console; only where the host is no demo.</summary>
    public Task<string> FirstCode => code.Task.WaitAsync(Patience);

    /// <summary>Where it answers.</summary>
    public Uri Address { get; private set; } = new("about:blank");

    public virtual async ValueTask InitializeAsync()
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in Arguments())
        {
            start.ArgumentList.Add(argument);
        }

        var ready = new TaskCompletionSource<Uri>(TaskCreationOptions.RunContinuationsAsynchronously);
        process = new Process { StartInfo = start, EnableRaisingEvents = true };
        process.OutputDataReceived += (_, line) => Hear(line.Data, ready);
        process.ErrorDataReceived += (_, line) => Hear(line.Data, ready);
        process.Exited += (_, _) => ready.TrySetException(new InvalidOperationException($"The program stopped:\n{said}"));
        process.Start();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        Address = await ready.Task.WaitAsync(Patience);
    }

    /// <summary>Whether it is the demo, which asks nobody to sign in.</summary>
    protected virtual bool IsDemo => true;

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        if (process is { HasExited: false })
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
        }

        process?.Dispose();
        Directory.Delete(folder, recursive: true);
        ThrowIfItFailed();
    }

    // A page that failed shows the reader a number only; here is why.
    private void ThrowIfItFailed()
    {
        lock (said)
        {
            var lines = said.ToString().Split('\n');
            var failed = Array.FindIndex(lines, line => FailureLine().IsMatch(line));
            if (failed >= 0)
            {
                throw new InvalidOperationException($"A page or circuit failed:\n{string.Join('\n', lines.Skip(failed).Take(MostFailureLines))}");
            }
        }
    }

    private string[] Arguments() =>
    [
        Repository.Program, "serve", .. IsDemo ? ["--demo"] : Array.Empty<string>(),
        "--database", Path.Combine(folder, "estate.db"),
        "--data", Repository.Seed,
        "--as-of", File.ReadAllText(Path.Combine(Repository.Seed, "demo-clock.txt")).Trim(),
        "--urls", "http://127.0.0.1:0",
    ];

    private void Hear(string? line, TaskCompletionSource<Uri> ready)
    {
        lock (said)
        {
            said.AppendLine(line);
        }

        if (line is not null && ReadyLine().Match(line) is { Success: true } match)
        {
            ready.TrySetResult(new Uri(match.Groups[1].Value));
        }

        if (line is not null && CodeLine().Match(line) is { Success: true } codeMatch)
        {
            code.TrySetResult(codeMatch.Groups[1].Value);
        }
    }

    [GeneratedRegex(@"with the code ([0-9A-Z-]+)")]
    private static partial Regex CodeLine();

    [GeneratedRegex("An unhandled exception has occurred|Unhandled exception in circuit")]
    private static partial Regex FailureLine();

    [GeneratedRegex(@"Open (http://localhost:\d+)")]
    private static partial Regex ReadyLine();
}
