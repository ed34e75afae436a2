using System.Globalization;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>Every page with the keyboard alone.</summary>
[Collection("journeys")]
public sealed class KeyboardTests(RunningHost host, PeopleHost people, Browser browser) : IClassFixture<RunningHost>, IClassFixture<PeopleHost>
{
    // More stops than any page has: reaching it is a trap.
    private const int MostStops = 700;

    public static TheoryData<string> Pages => [.. EveryPage.Paths];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_page_can_be_walked_to_its_end_and_shows_where_one_is(string path)
    {
        var page = DoorPages.Has(path)
            ? await DoorPages.VisitAsync(browser, people, path, 1280, "light")
            : await EveryPage.VisitAsync(browser, host.Address, path, 1280, "light");
        var unseen = new List<string>();
        var (stops, last) = (0, -1);
        for (; stops < MostStops; stops++)
        {
            await page.Keyboard.PressAsync("Tab");
            // “12 seen <a …>”; nothing behind the last element.
            var now = await page.EvaluateAsync<string>("measures.focus()");
            var words = now.Split(' ', 3);
            if (now.Length == 0 || int.Parse(words[0], CultureInfo.InvariantCulture) < last)
            {
                break;
            }

            last = int.Parse(words[0], CultureInfo.InvariantCulture);
            if (words[1] != "seen")
            {
                unseen.Add(words[2]);
            }
        }

        Assert.InRange(stops, 1, MostStops - 1);
        Assert.Empty(unseen);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_skip_link_comes_first_and_leads_past_the_menu()
    {
        foreach (var path in new[] { "/", "/week", "/sets" })
        {
            var page = await EveryPage.VisitAsync(browser, host.Address, path, 1280, "light");
            await page.Keyboard.PressAsync("Tab");
            await Expect(page.Locator(".skip")).ToBeFocusedAsync();
            await Expect(page.Locator(".skip")).ToBeInViewportAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("#main")).ToBeFocusedAsync();
            await page.Context.CloseAsync();
        }
    }
}
