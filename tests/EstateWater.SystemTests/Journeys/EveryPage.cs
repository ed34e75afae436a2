using System.Reflection;
using EstateWater.Web.Features.Rounds;
using EstateWater.Web.Hosting;
using EstateWater.Web.Parts.Preferences;
using Microsoft.AspNetCore.Components;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>Every page that has an address, found in the program, so that a new one cannot be forgotten.</summary>
internal static class EveryPage
{
    // Addresses whose parts or query a page needs to show something. The block and the day are of the demo estate.
    private static readonly Dictionary<string, string> Samples = new()
    {
        ["/blocks/{Code}"] = "/blocks/B8",
        ["/blocks/{Code}/sets/{DayText}"] = "/blocks/B8/sets/2026-01-19",
        ["/blocks/{Code}/soil"] = "/blocks/A1/soil",
        ["/join/{Secret}"] = "/join/nothing",
        ["/compare"] = "/compare?blocks=A1,A2,A3",
    };

    /// <summary>An address of each page, and of the pages for the rows in their other language.</summary>
    public static IReadOnlyList<string> Paths { get; } =
    [
        .. typeof(WebHost).Assembly.GetTypes()
            .SelectMany(page => page.GetCustomAttributes<RouteAttribute>())
            .Select(route => PathOf(route.Template))
            .Order(StringComparer.Ordinal),
        "/sets?lang=es",
        "/readings?lang=es",
        RoundEndpoint.Href + "?lang=es",
        "/preferences?lang=es",
    ];

    /// <summary>Whether it is used outdoors.</summary>
    public static bool IsForTheRows(string path) => path.StartsWith("/sets", StringComparison.Ordinal) || path.StartsWith("/readings", StringComparison.Ordinal) && !path.StartsWith(RoundEndpoint.Href, StringComparison.Ordinal) || DoorPages.Has(path);

    /// <summary>Whether a menu stands before its content; the pages about signing in and the one for a defect are plain.</summary>
    public static bool HasMenu(string path) => !DoorPages.Has(path) && path is not ("/start" or "/error");

    /// <summary>Opens a page and waits until it is as live as it will be; what can be measured of it is at hand as <c>measures</c>.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="host">Where the program answers.</param>
    /// <param name="path">The page's address.</param>
    /// <param name="width">Of the screen. [px]</param>
    /// <param name="preferences">The visitor's preferences as their cookie has them, or the appearance alone.</param>
    /// <param name="enter">What comes before; null for nothing.</param>
    public static async Task<PageVisit> VisitAsync(Browser browser, Uri host, string path, int width, string preferences, Func<IPage, Task>? enter = null)
    {
        var page = await browser.VisitAsync(host, width, 900, phone: false);
        var kept = preferences.Contains(':', StringComparison.Ordinal) ? preferences : preferences + ":";
        await page.Context.AddCookiesAsync([new() { Name = ReaderPreferences.Cookie, Value = Uri.EscapeDataString(kept), Url = host.ToString() }]);
        await page.AddInitScriptAsync(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Journeys", "page-measures.js")));
        await (enter?.Invoke(page) ?? Task.CompletedTask);
        await page.RouteAsync("**/*.js", LateAsync);
        var visit = new PageVisit(page, $"{path} opened at {width} px, {preferences}");
        await page.GotoAsync(path);
        await page.WaitForLoadStateAsync(LoadState.Load);
        if (path == "/week")
        {
            await Expect(page.Locator(".desk-bar")).ToHaveAttributeAsync("data-live", "true");
        }
        else if (await page.Locator("#sets, #take-form").CountAsync() > 0)
        {
            await Expect(page.Locator("html")).ToHaveAttributeAsync("data-outbox", "ready");
        }
        else if (await page.Locator(".chart-box").CountAsync() > 0)
        {
            await Expect(page.Locator(".chart-box .main-svg").First).ToBeVisibleAsync();
        }

        return visit;
    }

    // A page is drawn before its scripts have come, as on a weak signal; what they then move is seen in every run, not by chance.
    private static async Task LateAsync(IRoute script)
    {
        await Task.Delay(100);
        await script.ContinueAsync();
    }

    private static string PathOf(string template) =>
        Samples.GetValueOrDefault(template)
        ?? (template.Contains('{', StringComparison.Ordinal)
            ? throw new InvalidOperationException($"The page {template} has no sample address in {nameof(EveryPage)}: add one, so that it is looked at too.")
            : template);
}
