using System.Diagnostics;

namespace EstateWater.SystemTests;

/// <summary>A program run to its end.</summary>
/// <param name="ExitCode">How it ended.</param>
/// <param name="Output">What it printed.</param>
/// <param name="Errors">What it complained of.</param>
internal sealed record Tool(int ExitCode, string Output, string Errors)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    public static async Task<Tool> RunAsync(string folder, string program, string[] arguments, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Patience);
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var output = process.StandardOutput.ReadToEndAsync(limit.Token);
        var errors = process.StandardError.ReadToEndAsync(limit.Token);
        await process.WaitForExitAsync(limit.Token);
        return new Tool(process.ExitCode, await output, await errors);
    }
}
