using EstateWater.SystemTests.Journeys;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Browser))]

namespace EstateWater.SystemTests.Journeys;

/// <summary>Chromium as the system provides it; each visitor has cookies and storage of their own.</summary>
public sealed class Browser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? chromium;

    public async ValueTask InitializeAsync()
    {
        // A busy machine may take its time over a plan; a page that never answers still fails.
        Assertions.SetDefaultExpectTimeout(60_000);
        playwright = await Playwright.CreateAsync();
        chromium = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-dev-shm-usage"],
        });
    }

    /// <summary>A page on a desk.</summary>
    public Task<IPage> DeskAsync(Uri host) => VisitAsync(host, 1280, 900, phone: false);

    /// <summary>A page on a phone.</summary>
    public Task<IPage> PhoneAsync(Uri host) => VisitAsync(host, 390, 844, phone: true);

    /// <summary>A phone's browser of its own, which keeps its store in a folder.</summary>
    public async Task<IBrowserContext> PhoneWithStoreAsync(Uri host, string folder)
    {
        var context = await playwright!.Chromium.LaunchPersistentContextAsync(folder, new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-dev-shm-usage"],
            BaseURL = host.ToString(),
            ViewportSize = new() { Width = 390, Height = 844 },
            HasTouch = true,
            IsMobile = true,
        });
        context.SetDefaultTimeout(60_000);
        return context;
    }

    /// <summary>A page on a screen of some size.</summary>
    public async Task<IPage> VisitAsync(Uri host, int width, int height, bool phone)
    {
        var context = await chromium!.NewContextAsync(new()
        {
            BaseURL = host.ToString(),
            ViewportSize = new() { Width = width, Height = height },
            HasTouch = phone,
            IsMobile = phone,
        });
        context.SetDefaultTimeout(60_000);
        return await context.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (chromium is not null)
        {
            await chromium.DisposeAsync();
        }

        playwright?.Dispose();
    }
}
