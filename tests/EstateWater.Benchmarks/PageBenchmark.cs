using System.Diagnostics;
using System.Globalization;
using System.Net;

namespace EstateWater.Benchmarks;

/// <summary>The estate page of many blocks against a static file of the size that travels, from the same server, turn by turn.</summary>
internal static class PageBenchmark
{
    private const double MostTimes = 5, MostKb = 80;
    private const int Warming = 150, Requests = 200, Anew = 20;
    private const string AsBrowsersAsk = "gzip, deflate, br";

    public static async Task<bool> RunAsync(ServedEstate served, CancellationToken cancellation)
    {
        // As a browser asks: compressed, and what travels is what counts.
        using var client = new HttpClient(new SocketsHttpHandler { AutomaticDecompression = DecompressionMethods.None }) { BaseAddress = served.Address };
        await MustShowEveryBlock(served, cancellation);
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
            // A browser that asks in words not heard before is not served what was kept for others.
            anew.Add((await GetAsync(client, "/", cancellation, string.Create(CultureInfo.InvariantCulture, $"{AsBrowsersAsk};q=0.{900 + i}"))).Ms);
        }

        Console.WriteLine(pages);
        Console.WriteLine(files);
        Console.WriteLine(anew);
        var fast = Report.AtMost("estate page to static file, time to the last byte", pages.Median / files.Median, MostTimes, "times");
        var small = Report.AtMost("estate page as sent", bytes / 1000.0, MostKb, "kB");
        Report.Note("the same when the page is made anew instead of kept", anew.Median / files.Median, "times");
        return fast && small;
    }

    // A page that says there is nothing to show would be quick and small too.
    private static async Task MustShowEveryBlock(ServedEstate served, CancellationToken cancellation)
    {
        using var plain = new HttpClient { BaseAddress = served.Address };
        var html = await plain.GetStringAsync("/", cancellation);
        var absent = served.BlockCodes.Where(code => !html.Contains($"/blocks/{code}\"", StringComparison.Ordinal)).ToList();
        if (absent.Count > 0)
        {
            throw new InvalidOperationException($"The estate page leads to no page of {string.Join(", ", absent)}.");
        }
    }

    private static async Task<(double Ms, long Bytes)> GetAsync(HttpClient client, string path, CancellationToken cancellation, string encodings = AsBrowsersAsk)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.TryAddWithoutValidation("Accept-Encoding", encodings);
        var started = Stopwatch.GetTimestamp();
        using var response = await client.SendAsync(request, cancellation);
        var content = await response.Content.ReadAsByteArrayAsync(cancellation);
        var ms = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        response.EnsureSuccessStatusCode();
        return (ms, content.Length);
    }
}
