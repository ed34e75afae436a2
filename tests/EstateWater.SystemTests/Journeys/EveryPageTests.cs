using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What holds of every page: no barrier that a machine can find, by day and by night; narrow screens and large text; targets; keys.</summary>
[Collection("journeys")]
public sealed class EveryPageTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    // From WCAG 2.2: reflow at 320 px (1.4.10), text at 200 % (1.4.4), targets of 24 px (2.5.8); our own rule for gloves is 44.
    private const int Narrow = 320, Target = 24, GlovedTarget = 44;

    public static TheoryData<string> Pages => [.. EveryPage.Paths];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Has_no_barrier_by_day_and_by_night(string path)
    {
        await PublishOnceAsync();
        foreach (var look in new[] { "light", "dark" })
        {
            var page = await VisitAsync(path, 1280, look);
            await page.EvaluateAsync("document.querySelectorAll('details').forEach(part => part.open = true)");
            Assert.Equal(look, await page.EvaluateAsync<string>("getComputedStyle(document.documentElement).colorScheme"));
            Assert.Empty(await ViolationsAsync(page));
            await page.Context.CloseAsync();
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Fits_a_narrow_screen_with_targets_to_hit(string path)
    {
        await PublishOnceAsync();
        var page = await VisitAsync(path, Narrow, "light");
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(part => part.open = true)");
        Assert.Empty(await page.EvaluateAsync<string[]>("measures.wide()"));
        Assert.Equal(Narrow, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        Assert.Empty(await page.EvaluateAsync<string[]>("measures.silentRegions()"));
        Assert.Empty(await page.EvaluateAsync<string[]>("size => measures.small(size)", EveryPage.IsForTheRows(path) ? GlovedTarget : Target));
        await page.Context.CloseAsync();
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Bears_text_of_twice_the_size(string path)
    {
        var page = await VisitAsync(path, 1280, "light");
        await page.AddStyleTagAsync(new() { Content = "html { font-size: 200% !important; }" });
        Assert.Empty(await page.EvaluateAsync<string[]>("measures.wide()"));
        Assert.Equal(1280, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await page.Context.CloseAsync();
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Can_be_walked_with_the_keyboard_and_shows_where_one_is(string path)
    {
        // More stops than any page has: reaching it is a trap.
        const int Most = 700;
        var page = await VisitAsync(path, 1280, "light");
        var unseen = new List<string>();
        Focus? last = null;
        var stops = 0;
        for (; stops < Most; stops++)
        {
            await page.Keyboard.PressAsync("Tab");
            var now = await page.EvaluateAsync<Focus?>("measures.focus()");
            if (now is null || (last is not null && int.Parse(now.Order, System.Globalization.CultureInfo.InvariantCulture) < int.Parse(last.Order, System.Globalization.CultureInfo.InvariantCulture)))
            {
                break;
            }

            if (!now.Seen)
            {
                unseen.Add(now.Words);
            }

            last = now;
        }

        Assert.InRange(stops, 1, Most - 1);
        Assert.Empty(unseen);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_skip_link_comes_first_and_leads_past_the_menu()
    {
        foreach (var path in new[] { "/", "/week", "/sets" })
        {
            var page = await VisitAsync(path, 1280, "light");
            await page.Keyboard.PressAsync("Tab");
            await Expect(page.Locator(".skip")).ToBeFocusedAsync();
            await Expect(page.Locator(".skip")).ToBeInViewportAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("#main")).ToBeFocusedAsync();
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task Dark_follows_the_device_and_paper_is_light()
    {
        var page = await browser.DeskAsync(host.Address);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await page.GotoAsync("/methods");
        Assert.Equal("rgb(22, 26, 23)", await GroundAsync(page));
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        Assert.Equal("rgb(250, 249, 245)", await GroundAsync(page));
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark, Media = Media.Print });
        Assert.Equal("rgb(255, 255, 255)", await GroundAsync(page));
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/week")]
    [InlineData("/blocks/B8")]
    public async Task Nothing_moves_while_it_loads(string path)
    {
        var page = await VisitAsync(path, 1280, "light");
        if (path.StartsWith("/blocks", StringComparison.Ordinal))
        {
            await Expect(page.Locator(".chart-box .main-svg").First).ToBeVisibleAsync();
        }

        Assert.InRange(await page.EvaluateAsync<double>("measures.shift()"), 0, 0.01);
        await page.Context.CloseAsync();
    }

    // The demo's plan has tensions, depths, volumes, areas and temperatures on these pages: none may be left in a unit that was not chosen.
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Tells_nothing_in_a_unit_that_its_reader_did_not_choose(string path)
    {
        // Methods name the units of their sources, and the record of changes is kept in words.
        if (path is "/methods" or "/changes")
        {
            return;
        }

        var page = await VisitAsync(path, 1280, "light:mpa.in.acre-in.ac.f.en-US");
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(part => part.open = true)");
        var text = await page.Locator("main").EvaluateAsync<string>("main => main.innerText + [...main.querySelectorAll('[aria-label]')].map(e => e.getAttribute('aria-label')).join(' ')");
        Assert.DoesNotMatch(@"\d\s?(bar|mm|m³|ha|°C|cm|gal)\b", text);
        await page.Context.CloseAsync();
    }

    private static Task<string> GroundAsync(IPage page) => page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");

    private static async Task<IEnumerable<string>> ViolationsAsync(IPage page) => (await page.RunAxe()).Violations
        .Where(v => v.Impact is "moderate" or "serious" or "critical")
        .Select(v => $"{v.Impact} {v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}");

    private async Task<IPage> VisitAsync(string path, int width, string preferences)
    {
        var page = await browser.VisitAsync(host.Address, width, 900, phone: false);
        var kept = preferences.Contains(':', StringComparison.Ordinal) ? preferences : preferences + ":";
        await page.Context.AddCookiesAsync([new() { Name = "estate-water-preferences", Value = Uri.EscapeDataString(kept), Url = host.Address.ToString() }]);
        await page.AddInitScriptAsync("""
            window.shifts = 0;
            new PerformanceObserver((list) => list.getEntries().forEach((entry) => { window.shifts += entry.hadRecentInput ? 0 : entry.value; })).observe({ type: "layout-shift", buffered: true });
            """);
        await page.AddInitScriptAsync(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Journeys", "page-measures.js")));
        await page.GotoAsync(path);
        await page.WaitForLoadStateAsync(LoadState.Load);
        if (path == "/week")
        {
            await Expect(page.Locator(".desk-bar")).ToHaveAttributeAsync("data-live", "true");
        }
        else if (EveryPage.IsForTheRows(path) && await page.Locator("#sets").CountAsync() > 0)
        {
            await Expect(page.Locator("html")).ToHaveAttributeAsync("data-outbox", "ready");
        }

        return page;
    }

    private async Task PublishOnceAsync()
    {
        if (published)
        {
            return;
        }

        var desk = await browser.DeskAsync(host.Address);
        await (await WeekDesk.OpenAsync(desk)).PublishAsync("Ana", "Go slowly.");
        await desk.Context.CloseAsync();
        published = true;
    }

    // One program serves all tests of this class, each of which is an object of its own.
    private static bool published;

    private sealed record Focus(string Order, bool Seen, string Words);
}
