using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What holds of every page. It is visited twice, and each visit serves all checks that suit it: opening pages is what takes the time.</summary>
[Collection("journeys")]
public sealed class EveryPageTests(PublishedHost host, PeopleHost people, Browser browser) : IClassFixture<PublishedHost>, IClassFixture<PeopleHost>
{
    // From WCAG 2.2: reflow at 320 px (1.4.10), text at 200 % (1.4.4), targets of 24 px (2.5.8); our own rule for gloves is 44.
    private const int Desk = 1280, Narrow = 320, Target = 24, GlovedTarget = 44;

    public static TheoryData<string> Pages => [.. EveryPage.Paths];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Serves_a_desk_by_day_with_keys_alone_and_with_large_text(string path)
    {
        await using var visit = await VisitAsync(path, Desk, "light");

        await visit.CheckShiftAsync();
        await visit.CheckLookAsync("light");
        await visit.CheckKeysAsync(EveryPage.HasMenu(path));
        await visit.UnfoldAsync();
        await visit.CheckBarriersAsync();
        await visit.CheckTwiceTheTextAsync(Desk);
        visit.AssertNothingFound();
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Serves_a_narrow_screen_by_night_in_other_units(string path)
    {
        await using var visit = await VisitAsync(path, Narrow, "dark:mpa.in.acre-in.ac.f.en-US");
        await visit.CheckLookAsync("dark");

        // On a phone is where pages for the rows are read.
        if (EveryPage.IsForTheRows(path))
        {
            await visit.CheckShiftAsync();
        }

        await visit.UnfoldAsync();
        await visit.CheckWidthAsync(Narrow);
        await visit.CheckTargetsAsync(EveryPage.IsForTheRows(path) ? GlovedTarget : Target);

        // The night has its colours on a wide screen too, where more is shown.
        await visit.Page.SetViewportSizeAsync(Desk, 900);
        await visit.CheckBarriersAsync();

        // Methods name the units of their sources.
        if (path != "/methods")
        {
            await visit.CheckUnitsAsync();
        }

        visit.AssertNothingFound();
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

    private static Task<string> GroundAsync(IPage page) => page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");

    private Task<PageVisit> VisitAsync(string path, int width, string preferences) => DoorPages.Has(path)
        ? DoorPages.VisitAsync(browser, people, path, width, preferences)
        : EveryPage.VisitAsync(browser, host.Address, path, width, preferences);
}
