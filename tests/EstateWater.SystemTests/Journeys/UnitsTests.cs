using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>An irrigator whose meter shows gallons, and a manager who reads cubic metres.</summary>
[Collection("journeys")]
public sealed class UnitsTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task A_meter_in_gallons_is_kept_in_cubic_metres_and_shown_again_as_it_was_typed()
    {
        var desk = await browser.DeskAsync(host.Address);
        await (await WeekDesk.OpenAsync(desk)).PublishAsync("Ana", "Go slowly.");

        var page = await browser.PhoneAsync(host.Address);
        await page.GotoAsync("/preferences");
        await page.GetByRole(AriaRole.Button, new() { Name = "All US" }).ClickAsync();
        await Expect(page.Locator(".kept")).ToHaveTextAsync("Kept.");
        var phone = await SetsPhone.OpenAsync(page);
        await Expect(page.GetByText("or water used, gal").First).ToBeAttachedAsync();
        var set = await phone.ConfirmFirstAsync("Ben", "3,5", "23,907.4 gal".Replace(",", "", StringComparison.Ordinal));

        // Clock times are the reader's, whether the server writes them or the phone.
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex(@"^Sent \d{1,2}:\d\d [AP]M"));
        await Expect(page.Locator(".set-times").First).ToContainTextAsync(new Regex(@"\d:\d\d PM–\d{1,2}:\d\d AM"));

        // 23 907.4 US gallons of 231 in³ are 90.499 m³.
        await Expect(desk.Locator("table.tonight")).ToContainTextAsync("meter 90.5 m³ (Ben");
        await page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.State(set)).ToContainTextAsync("meter 23,907.4 gal");
        await Expect(page.Locator($"form[data-set='{set}'] input[name=meter]")).ToHaveValueAsync("23907.4");
    }
}
