using Microsoft.Playwright;

namespace EstateWater.Benchmarks;

/// <summary>Memory the server holds for a page while it stands open in a real browser.</summary>
internal static class OpenPageBenchmark
{
    private const double MostMb = 0.5, BytesPerMb = 1_000_000;
    private const int Tabs = 15, Repetitions = 5, WeekTabs = 5, WeekRepetitions = 2;

    // What a closed page leaves behind is dropped once the server has noticed.
    private static readonly TimeSpan Settling = TimeSpan.FromSeconds(2);

    public static async Task<bool> RunAsync(ServedEstate served, CancellationToken cancellation)
    {
        Console.WriteLine($"circuit: memory held on the server by each open page of {ServedEstate.Blocks} blocks");
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        var estate = await MeasureAsync("estate page", OpenEstateAsync, Tabs, Repetitions);
        var week = await MeasureAsync("page of the week, which is interactive", OpenWeekAsync, WeekTabs, WeekRepetitions);
        Console.WriteLine(estate);
        Console.WriteLine(week);
        var met = Report.AtMost("an open estate page", estate.Median, MostMb, "MB");
        Report.Note("an open page of the week", week.Median, "MB");
        return met;

        async Task<Samples> MeasureAsync(string name, Func<IPage, Task> open, int tabs, int repetitions)
        {
            var samples = new Samples(name, "MB");
            for (var i = 0; i <= repetitions; i++)
            {
                var perPage = await HeldAsync(served, browser, open, tabs, cancellation) / BytesPerMb;
                if (i > 0) // The first fills what the server keeps for all.
                {
                    samples.Add(perPage);
                }
            }

            return samples;
        }
    }

    private static async Task<double> HeldAsync(ServedEstate served, IBrowser browser, Func<IPage, Task> open, int tabs, CancellationToken cancellation)
    {
        await Task.Delay(Settling, cancellation);
        var before = await served.HeapBytesAsync(cancellation);
        var visitors = new List<IBrowserContext>();
        for (var i = 0; i < tabs; i++)
        {
            // A visitor each: one browser opens only six connections to a server.
            var visitor = await browser.NewContextAsync(new() { BaseURL = served.Address.ToString() });
            visitors.Add(visitor);
            await open(await visitor.NewPageAsync());
        }

        await Task.Delay(Settling, cancellation);
        var held = (await served.HeapBytesAsync(cancellation) - before) / tabs;
        foreach (var visitor in visitors)
        {
            await visitor.CloseAsync();
        }

        return held;
    }

    // Open means listening for news as well.
    private static Task OpenEstateAsync(IPage page) =>
        page.RunAndWaitForResponseAsync(() => page.GotoAsync("/"), response => response.Url.EndsWith("/news", StringComparison.Ordinal) && response.Ok);

    private static async Task OpenWeekAsync(IPage page)
    {
        await page.RunAndWaitForWebSocketAsync(() => page.GotoAsync("/week"));
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
    }
}
