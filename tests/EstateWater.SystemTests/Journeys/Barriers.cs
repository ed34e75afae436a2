using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What stands in the way of people, as far as a machine can tell.</summary>
internal static class Barriers
{
    // What passes is counted for nobody, and on a large page takes longer to write down than to find.
    private static readonly AxeRunOptions Options = new() { ResultTypes = [ResultType.Violations] };

    /// <summary>Serious and critical findings of axe.</summary>
    public static Task<IEnumerable<string>> SeriousAsync(IPage page) => FoundAsync(page, "serious", "critical");

    /// <summary>Those, and moderate ones too.</summary>
    public static Task<IEnumerable<string>> ModerateAsync(IPage page) => FoundAsync(page, "moderate", "serious", "critical");

    /// <summary>What is to be touched and is smaller than 44 px, which gloves need.</summary>
    public static Task<string[]> SmallTargetsAsync(IPage page) => page.EvaluateAsync<string[]>("""
        [...document.querySelectorAll('a, button, input, summary')]
            .map(e => [e, e.getBoundingClientRect()])
            .filter(([e, box]) => box.height > 0 && (box.height < 44 || box.width < 44))
            .map(([e, box]) => `${e.outerHTML.slice(0, 80)} ${box.width}x${box.height}`)
        """);

    private static async Task<IEnumerable<string>> FoundAsync(IPage page, params string[] impacts) => (await page.RunAxe(Options)).Violations
        .Where(v => impacts.Contains(v.Impact))
        .Select(v => $"{v.Impact} {v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}");
}
