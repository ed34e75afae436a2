using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What holds of every page: no barrier that a machine can find, by day and by night; narrow screens and large text; targets; units.</summary>
[Collection("journeys")]
public sealed class EveryPageTests(RunningHost host, PeopleHost people, Browser browser) : IClassFixture<RunningHost>, IClassFixture<PeopleHost>
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

    private Task<IPage> VisitAsync(string path, int width, string preferences) => DoorPages.Has(path)
        ? DoorPages.VisitAsync(browser, people, path, width, preferences)
        : EveryPage.VisitAsync(browser, host.Address, path, width, preferences);

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
}
