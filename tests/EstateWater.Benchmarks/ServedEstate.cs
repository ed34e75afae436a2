using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Threading.Channels;

namespace EstateWater.Benchmarks;

/// <summary>The published program in its own process, serving an estate of many blocks from a new database.</summary>
internal sealed partial class ServedEstate : IAsyncDisposable
{
    public const int Blocks = 500;

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    private readonly DirectoryInfo workplace = Directory.CreateTempSubdirectory("estate-water-bench-");
    private readonly Channel<string> said = Channel.CreateUnbounded<string>();
    private Process? process;

    private ServedEstate()
    {
    }

    /// <summary>Where it answers.</summary>
    public Uri Address { get; private set; } = new("about:blank");

    /// <summary>The codes of its blocks.</summary>
    public IReadOnlyList<string> BlockCodes { get; private set; } = [];

    public static async Task<ServedEstate> StartAsync(string folder, string asOf, CancellationToken cancellation)
    {
        var served = new ServedEstate();
        try
        {
            await served.PrepareAsync(folder, asOf, cancellation);
            return served;
        }
        catch
        {
            await served.DisposeAsync();
            throw;
        }
    }

    /// <summary>Managed memory in use after two full collections. [bytes]</summary>
    public async Task<double> HeapBytesAsync(CancellationToken cancellation)
    {
        await process!.StandardInput.WriteLineAsync("heap".AsMemory(), cancellation);
        await process.StandardInput.FlushAsync(cancellation);
        var answer = await HearAsync(line => line.StartsWith(StartupHook.Answer, StringComparison.Ordinal), cancellation);
        return double.Parse(answer[StartupHook.Answer.Length..], CultureInfo.InvariantCulture);
    }

    public async ValueTask DisposeAsync()
    {
        if (process is { HasExited: false })
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
        }

        process?.Dispose();
        workplace.Delete(recursive: true);
    }

    private async Task PrepareAsync(string folder, string asOf, CancellationToken cancellation)
    {
        var (program, wide, database) = (Path.Combine(workplace.FullName, "app"), Path.Combine(workplace.FullName, "estate"), Path.Combine(workplace.FullName, "data", "estate.db"));
        Console.WriteLine($"Publishing the program and laying out {Blocks} blocks from {folder}");
        await ChildRun.TimeAsync(cancellation, "publish", Checkout.WebProject, "-c", "Release", "--no-build", "-o", program, "-v", "quiet");
        StaticFiles.Add(program);
        BlockCodes = WideEstate.Write(folder, wide, Blocks);
        var web = Path.Combine(program, "EstateWater.Web.dll");
        await ChildRun.TimeAsync(cancellation, web, "import", "--data", wide, "--database", database);
        await StartAsync([web, "serve", "--demo", "--database", database, "--as-of", asOf, "--urls", "http://127.0.0.1:0"], cancellation);
    }

    private async Task StartAsync(string[] arguments, CancellationToken cancellation)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_STARTUP_HOOKS"] = typeof(StartupHook).Assembly.Location;
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) => said.Writer.TryWrite(line.Data ?? "");
        process.ErrorDataReceived += (_, line) => Console.Error.WriteLine(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        Address = new Uri(ReadyLine().Match(await HearAsync(ReadyLine().IsMatch, cancellation)).Groups[1].Value);
    }

    private async Task<string> HearAsync(Func<string, bool> wanted, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Patience);
        await foreach (var line in said.Reader.ReadAllAsync(limit.Token))
        {
            if (wanted(line))
            {
                return line;
            }
        }

        throw new InvalidOperationException("The program stopped speaking.");
    }

    [GeneratedRegex(@"Open (http://localhost:\d+)")]
    private static partial Regex ReadyLine();
}
