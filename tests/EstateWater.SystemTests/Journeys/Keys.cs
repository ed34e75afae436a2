using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>Ways through a page with the keyboard alone.</summary>
internal static class Keys
{
    public static async Task TabToAsync(IPage page, string selector)
    {
        for (var i = 0; i < 60; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("selector => document.activeElement.matches(selector)", selector))
            {
                return;
            }
        }

        Assert.Fail($"60 presses of Tab never reached {selector}.");
    }
}
