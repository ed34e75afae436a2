using System.Diagnostics;
using System.Net;

namespace EstateWater.Benchmarks;

/// <summary>The estate page of many blocks against a static file of the size that travels, from the same server, turn by turn.</summary>
internal static class PageBenchmark
{
    private const double MostTimes = 5, MostKb = 80;
    private const int Warming = 150, Requests = 200, Anew = 20;

    public static async Task<bool> RunAsync(ServedEstate served, CancellationToken cancellation)
    {
        // As a browser asks: compressed, and what travels is what counts.
        using var client = new HttpClient(new SocketsHttpHandler { AutomaticDecompression = DecompressionMethods.None }) { BaseAddress = served.Address };
        client.DefaultRequestHeaders.Add("Accept-Encoding", "gzip, deflate, br");
        var bytes = (await GetAsync(client, "/", cancellation)).Bytes;
        var file = $"/{StaticFiles.NearestTo(bytes)}";
        Console.WriteLine($"page: the estate page of {ServedEstate.Blocks} blocks, {bytes} bytes as sent, against {file}");
        for (var i = 0; i < Warming; i++)
        {
            await GetAsync(client, "/", cancellation);
            await GetAsync(client, file, cancellation);
        }

        var (pages, files, anew) = (new Samples("estate page", "ms"), new Samples("static file", "ms"), new Samples("estate page made anew", "ms"));
        for (var i = 0; i < Requests; i++)
        {
            pages.Add((await GetAsync(client, "/", cancellation)).Ms);
            files.Add((await GetAsync(client, file, cancellation)).Ms);
        }

        for (var i = 0; i < Anew; i++)
        {
            anew.Add((await GetAsync(client, $"/?{i}", cancellation)).Ms);
        }

        Console.WriteLine(pages);
        Console.WriteLine(files);
        Console.WriteLine(anew);
        var fast = Report.AtMost("estate page to static file, time to the last byte", pages.Median / files.Median, MostTimes, "times");
        var small = Report.AtMost("estate page as sent", bytes / 1000.0, MostKb, "kB");
        Report.Note("the same when the page is made anew instead of kept", anew.Median / files.Median, "times");
        return fast && small;
    }

    private static async Task<(double Ms, long Bytes)> GetAsync(HttpClient client, string path, CancellationToken cancellation)
    {
        var started = Stopwatch.GetTimestamp();
        using var response = await client.GetAsync(path, cancellation);
        var content = await response.Content.ReadAsByteArrayAsync(cancellation);
        var ms = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        response.EnsureSuccessStatusCode();
        return (ms, content.Length);
    }
}
