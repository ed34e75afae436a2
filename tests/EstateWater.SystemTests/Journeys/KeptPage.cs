using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A page that a phone keeps for use without signal.</summary>
internal static class KeptPage
{
    /// <summary>Waits until the page, its style and its scripts are kept.</summary>
    /// <remarks>Polled here: the pages' own policy forbids the evaluation that waiting in the page would need.</remarks>
    /// <param name="page">Open in the phone.</param>
    /// <param name="name">Of the store that keeps it.</param>
    /// <param name="parts">Paths of all that must be in it.</param>
    public static async Task WaitAsync(IPage page, string name, params string[] parts)
    {
        for (var tries = 0; tries < 100; tries++)
        {
            if (await page.EvaluateAsync<bool>("""
                async ({ name, parts }) => {
                    const kept = await caches.open(name);
                    const found = await Promise.all(parts.map(p => kept.match(p)));
                    return navigator.serviceWorker.controller !== null && found.every(Boolean);
                }
                """, new { name, parts }))
            {
                return;
            }

            await page.WaitForTimeoutAsync(100);
        }

        Assert.Fail("The page was not kept within 10 s.");
    }
}
