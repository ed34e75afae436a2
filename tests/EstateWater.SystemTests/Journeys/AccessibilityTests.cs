using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What a machine can check of access and of our promises to a phone in the sun.</summary>
[Collection("journeys")]
public sealed class AccessibilityTests(PublishedHost host, Browser browser) : IClassFixture<PublishedHost>
{
    [Fact]
    public async Task Looking_back_can_be_followed_and_stopped_without_a_barrier()
    {
        var phone = await browser.PhoneAsync(host.Address);
        await phone.GotoAsync("/accuracy");
        await Expect(phone.Locator("[data-look-back]")).ToContainTextAsync("past mornings done");
        Assert.Empty(await Barriers.SeriousAsync(phone));
        var stop = phone.GetByRole(AriaRole.Button, new() { Name = "Stop" });
        await stop.FocusAsync();
        await phone.Keyboard.PressAsync("Enter");
        await Expect(phone.GetByRole(AriaRole.Button, new() { Name = "Start" })).ToBeVisibleAsync();
        await Expect(phone.GetByRole(AriaRole.Main)).ToContainTextAsync("Stopped");
        Assert.Empty(await Barriers.SeriousAsync(phone));
        Assert.Equal(390, await phone.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await phone.Context.CloseAsync();
    }

    [Fact]
    public async Task On_the_phone_targets_are_large_and_nothing_is_wider_than_the_screen()
    {
        var phone = await SetsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.Page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
        Assert.Empty(await Barriers.SmallTargetsAsync(phone.Page));
        Assert.InRange(await phone.Page.EvaluateAsync<double>("document.querySelector('.set-start').getBoundingClientRect().height"), 56, 80);
        Assert.InRange(await phone.Page.EvaluateAsync<double>("Math.min(...[...document.querySelectorAll('main *')].map(e => parseFloat(getComputedStyle(e).fontSize)))"), 18, 40);
        Assert.Equal(390, await phone.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }

    [Fact]
    public async Task While_readings_are_taken_targets_are_large_every_part_is_named_and_nothing_is_wider_than_the_screen()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await AssertForTheFieldAsync(phone.Page);
        Assert.InRange(await HeightAsync(phone.Page, "[data-open]"), 56, 80);
        await phone.ReadAsync(await phone.FirstStopAsync());
        await phone.AddLeavesAsync("12", "12.5", "18");
        Assert.InRange(await HeightAsync(phone.Page, "#add-leaf"), 56, 80);
        foreach (var kind in new[] { "Leaves in the chamber", "Soil tube", "Canopy", "Growth stage" })
        {
            await phone.Page.GetByLabel(kind).CheckAsync();
            await AssertForTheFieldAsync(phone.Page);
            Assert.Empty(await Barriers.SeriousAsync(phone.Page));
        }

        Assert.InRange(await HeightAsync(phone.Page, "#save"), 56, 80);
        await phone.Page.Context.CloseAsync();
    }

    private static async Task AssertForTheFieldAsync(IPage page)
    {
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");

        // A radio's label is its target.
        Assert.Empty(await page.EvaluateAsync<string[]>("""
            [...document.querySelectorAll('a, button, input, select, summary')]
                .map(e => [e, (e.type === 'radio' ? e.closest('label') : e).getBoundingClientRect()])
                .filter(([e, box]) => box.height > 0 && (box.height < 44 || box.width < 44))
                .map(([e, box]) => `${e.outerHTML.slice(0, 80)} ${box.width}x${box.height}`)
            """));
        Assert.InRange(await page.EvaluateAsync<double>("Math.min(...[...document.querySelectorAll('main *')].map(e => parseFloat(getComputedStyle(e).fontSize)))"), 18, 40);
        Assert.Equal(390, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }

    private static Task<double> HeightAsync(IPage page, string selector) => page.EvaluateAsync<double>("selector => document.querySelector(selector).getBoundingClientRect().height", selector);
}
