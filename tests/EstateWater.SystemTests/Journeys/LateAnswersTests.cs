using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A live page far from the program: answers come while somebody types on.</summary>
[Collection("journeys")]
public sealed class LateAnswersTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    private const float LateMs = 400;
    private const float BetweenKeysMs = 150;

    [Fact]
    public async Task What_is_typed_and_chosen_stays_as_it_was_typed()
    {
        var page = await browser.DeskAsync(host.Address);
        await page.RouteWebSocketAsync(new Regex("_blazor"), AnswerLate);
        var week = await WeekDesk.OpenAsync(page);
        await page.Locator("summary", new() { HasText = "Move a set" }).ClickAsync();
        var night = page.Locator("#move-night");
        var chosen = (await night.Locator("option").AllInnerTextsAsync())[^3];
        await night.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await page.WaitForTimeoutAsync(BetweenKeysMs);
        await page.Keyboard.PressAsync("ArrowUp");
        await page.WaitForTimeoutAsync(BetweenKeysMs);
        await page.Keyboard.PressAsync("ArrowUp");
        await Keys.TabToAsync(page, "#move-opens");
        await page.Keyboard.TypeAsync("0930PM", new() { Delay = BetweenKeysMs });
        await Keys.TabToAsync(page, "#move-hours");
        await page.Keyboard.TypeAsync("3.75", new() { Delay = BetweenKeysMs });
        await week.FirstHours.SelectTextAsync();
        await page.Keyboard.TypeAsync("5.25", new() { Delay = BetweenKeysMs });
        await page.WaitForTimeoutAsync(3 * LateMs);

        Assert.Equal("5.25", await week.FirstHours.InputValueAsync());
        Assert.Equal(chosen, await night.Locator("option:checked").InnerTextAsync());
        Assert.Equal("21:30", await page.Locator("#move-opens").InputValueAsync());
        Assert.Equal("3.75", await page.Locator("#move-hours").InputValueAsync());
        await page.Context.CloseAsync();
    }

    private static void AnswerLate(IWebSocketRoute socket)
    {
        var before = Task.CompletedTask;
        var server = socket.ConnectToServer();
        server.OnMessage(frame => before = PassAsync(frame, before));

        async Task PassAsync(IWebSocketFrame frame, Task earlier)
        {
            var late = Task.Delay(TimeSpan.FromMilliseconds(LateMs));
            await earlier;
            await late;
            if (frame.Binary is { } binary)
            {
                socket.Send(binary);
            }
            else
            {
                socket.Send(frame.Text!);
            }
        }
    }
}
