using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A live page whose connection goes and comes.</summary>
[Collection("journeys")]
public sealed class LostConnectionTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task Says_that_it_is_gone_comes_back_by_itself_and_keeps_what_was_typed()
    {
        var page = await browser.DeskAsync(host.Address);
        var line = await Cut.OnAsync(page);
        await WeekDesk.OpenAsync(page);
        await Expect(Lost(page)).ToBeEmptyAsync();
        await page.Locator("summary", new() { HasText = "Move a set" }).ClickAsync();
        await page.Locator("#move-hours").FillAsync("7,25");

        await line.CutAsync();
        await Expect(Lost(page)).ToContainTextAsync("The connection is lost.");
        await Expect(Lost(page)).ToBeInViewportAsync();

        // The component library colours this element's ground too: the words must not vanish into it.
        var colours = await Lost(page).EvaluateAsync<string[]>("line => [getComputedStyle(line).color, getComputedStyle(line).backgroundColor]");
        Assert.Equal(["rgb(29, 36, 31)", "rgb(250, 249, 245)"], colours);

        // What is typed while nobody hears it is planned afterwards, not only shown.
        var week = new WeekDesk(page);
        await week.FirstHours.FillAsync("6.25");
        await week.FirstHours.PressAsync("Tab");

        line.Mend();
        await Expect(Lost(page)).ToBeEmptyAsync();
        await Expect(page.Locator("#move-hours")).ToHaveValueAsync("7,25");
        await Expect(page.Locator("tr.by-hand")).ToHaveCountAsync(1);
        await Expect(page.Locator(".draft-changes li").First).ToContainTextAsync("6.25 h");
        await Expect(week.Computing).ToBeEmptyAsync();
        await Expect(page.Locator(".desk-bar a[href$='#your-changes']")).ToHaveTextAsync(new Regex("worse$"));

        // And the page is as live as before.
        await week.ChangeFirstHoursAsync(hours => hours == 6 ? 5 : 6);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task What_was_typed_comes_back_after_the_page_had_to_load_anew()
    {
        var page = await browser.DeskAsync(host.Address);
        await WeekDesk.OpenAsync(page);
        await page.Locator("#out-nights").EvaluateAsync("field => field.closest('details').open = true");
        await page.Locator("#out-nights").FillAsync("5");

        // As the framework says it when the server does not know the page any more.
        await page.EvaluateAsync("window.isFirst = true");
        await Lost(page).EvaluateAsync("line => line.dispatchEvent(new CustomEvent('components-reconnect-state-changed', { detail: { state: 'rejected' } }))");
        await page.WaitForFunctionAsync("() => !window.isFirst && document.querySelector('.desk-bar[data-live=true]') !== null");
        await Expect(page.Locator("#out-nights")).ToHaveValueAsync("5");
        await page.Context.CloseAsync();
    }

    private static ILocator Lost(IPage page) => page.Locator("#components-reconnect-modal");

    /// <summary>The way between a page's live part and the program, which can be cut.</summary>
    private sealed class Cut
    {
        private readonly List<IWebSocketRoute> open = [];
        private volatile bool isCut;

        public static async Task<Cut> OnAsync(IPage page)
        {
            var line = new Cut();
            await page.RouteWebSocketAsync(address => address.Contains("_blazor", StringComparison.Ordinal), line.Connect);
            await page.RouteAsync("**/_blazor/**", route => line.isCut ? route.AbortAsync() : route.ContinueAsync());
            return line;
        }

        public async Task CutAsync()
        {
            isCut = true;
            foreach (var socket in open)
            {
                await socket.CloseAsync(new() { Code = 1001 });
            }

            open.Clear();
        }

        public void Mend() => isCut = false;

        private void Connect(IWebSocketRoute socket)
        {
            socket.ConnectToServer();
            open.Add(socket);
        }
    }
}
