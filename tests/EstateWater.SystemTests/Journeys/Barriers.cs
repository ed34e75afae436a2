using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What stands in the way of people, as far as a machine can tell.</summary>
internal static class Barriers
{
    /// <summary>Serious and critical findings of axe.</summary>
    public static async Task<IEnumerable<string>> SeriousAsync(IPage page) => (await page.RunAxe()).Violations
        .Where(v => v.Impact is "serious" or "critical")
        .Select(v => $"{v.Impact} {v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}");

    /// <summary>What is to be touched and is smaller than 44 px, which gloves need.</summary>
    public static Task<string[]> SmallTargetsAsync(IPage page) => page.EvaluateAsync<string[]>("""
        [...document.querySelectorAll('a, button, input, summary')]
            .map(e => [e, e.getBoundingClientRect()])
            .filter(([e, box]) => box.height > 0 && (box.height < 44 || box.width < 44))
            .map(([e, box]) => `${e.outerHTML.slice(0, 80)} ${box.width}x${box.height}`)
        """);
}
