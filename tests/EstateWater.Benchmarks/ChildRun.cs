using System.Diagnostics;

namespace EstateWater.Benchmarks;

/// <summary>Runs a program to its end.</summary>
internal static class ChildRun
{
    /// <summary>How long it took, start of the process to its exit.</summary>
    /// <exception cref="InvalidOperationException">It failed; the message holds what it said.</exception>
    public static async Task<TimeSpan> TimeAsync(CancellationToken cancellation, params string[] arguments)
    {
        var started = Stopwatch.GetTimestamp();
        using var process = Process.Start(new ProcessStartInfo("dotnet", arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var errors = process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        var took = Stopwatch.GetElapsedTime(started);
        return process.ExitCode == 0
            ? took
            : throw new InvalidOperationException($"dotnet {string.Join(' ', arguments)} ended with {process.ExitCode}:\n{await errors}{await output}");
    }
}
