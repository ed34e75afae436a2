using System.Globalization;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>One page as one visitor has it open, and all that its checks found: they are told together, so that one run names everything.</summary>
/// <remarks>The checks leave the page as it is but for its focus, unless they say otherwise.</remarks>
internal sealed partial class PageVisit : IAsyncDisposable
{
    // More stops than any page has: reaching it is a trap.
    private const int MostStops = 700;

    private readonly string what;
    private readonly List<string> found = [];

    /// <param name="page">Not yet gone anywhere: what its policy blocks is heard from here on.</param>
    /// <param name="what">Which page it is going to show, and how, for the words.</param>
    public PageVisit(IPage page, string what)
    {
        (Page, this.what) = (page, what);
        page.Console += (_, message) =>
        {
            if (message.Text.Contains("Content Security Policy", StringComparison.Ordinal))
            {
                Find("blocked by the policy", message.Text);
            }
        };
    }

    public IPage Page { get; }

    /// <summary>Opens all that can be unfolded.</summary>
    public Task UnfoldAsync() => Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => part.open = true)");

    /// <summary>The colours are the chosen ones.</summary>
    /// <param name="look"><c>light</c> or <c>dark</c>.</param>
    public async Task CheckLookAsync(string look)
    {
        var shown = await Page.EvaluateAsync<string>("getComputedStyle(document.documentElement).colorScheme");
        if (shown != look)
        {
            Find("look", $"{shown} instead of {look}");
        }
    }

    /// <summary>Nothing has moved since the page began to load.</summary>
    public async Task CheckShiftAsync()
    {
        // Common practice calls 0.1 good; nothing of ours has a reason to move at all.
        var shift = await Page.EvaluateAsync<double>("measures.shift()");
        if (shift > 0.01)
        {
            Find("moves while it loads", string.Create(CultureInfo.InvariantCulture, $"layout shift {shift:0.000}"));
        }
    }

    /// <summary>Keys lead through the page to its end, and every stop shows that one is there.</summary>
    /// <param name="hasMenu">Whether a skip link must come first and lead past a menu.</param>
    public async Task CheckKeysAsync(bool hasMenu)
    {
        var (stops, last) = (0, -1);
        for (; stops < MostStops; stops++)
        {
            await Page.Keyboard.PressAsync("Tab");
            // “12 seen <a …>”; nothing behind the last element.
            var now = await Page.EvaluateAsync<string>("measures.focus()");
            var words = now.Split(' ', 3);
            if (now.Length == 0 || int.Parse(words[0], CultureInfo.InvariantCulture) < last)
            {
                break;
            }

            last = int.Parse(words[0], CultureInfo.InvariantCulture);
            if (words[1] != "seen")
            {
                Find("focus not seen", words[2]);
            }

            if (hasMenu && stops == 0 && !await Page.EvaluateAsync<bool>("measures.isSkipInView()"))
            {
                Find("skip link not first and in view", words[2]);
            }
        }

        if (stops is 0 or MostStops)
        {
            Find("keys", $"{stops} stops from the start to the end");
        }

        if (hasMenu)
        {
            await CheckSkipAsync();
        }
    }

    /// <summary>A machine finds no barrier of moderate weight or more.</summary>
    public async Task CheckBarriersAsync() => Find("barrier", await Barriers.ModerateAsync(Page));

    /// <summary>The page does not scroll sideways, and its parts that do can be reached and have a name.</summary>
    /// <param name="width">Of the screen. [px]</param>
    public async Task CheckWidthAsync(int width)
    {
        Find($"wider than {width} px", await Page.EvaluateAsync<string[]>("width => measures.wide(width)", width));
        Find("scrolls without a name or keys", await Page.EvaluateAsync<string[]>("measures.silentRegions()"));
    }

    /// <summary>What is to be hit is large enough.</summary>
    /// <param name="size">Least width and height. [px]</param>
    public async Task CheckTargetsAsync(int size) =>
        Find($"smaller than {size} px", await Page.EvaluateAsync<string[]>("size => measures.small(size)", size));

    /// <summary>Text of twice the size fits as well; it stays so large.</summary>
    /// <param name="width">Of the screen. [px]</param>
    public async Task CheckTwiceTheTextAsync(int width)
    {
        await Page.AddStyleTagAsync(new() { Content = "html { font-size: 200% !important; }" });
        Find($"with text at 200 % wider than {width} px", await Page.EvaluateAsync<string[]>("width => measures.wide(width)", width));
    }

    /// <summary>To one who reads in MPa, inches, acre-inches, acres and °F, nothing is told in another unit.</summary>
    public async Task CheckUnitsAsync()
    {
        var text = await Page.Locator("main").EvaluateAsync<string>("main => main.innerText + [...main.querySelectorAll('[aria-label]')].map(e => e.getAttribute('aria-label')).join(' ')");
        Find("in a unit that was not chosen", OtherUnit().Matches(text).Select(match => match.Value));
    }

    /// <summary>Fails with all that was found, if anything was.</summary>
    public void AssertNothingFound()
    {
        lock (found)
        {
            Assert.True(found.Count == 0, $"{what}:\n  {string.Join("\n  ", found)}");
        }
    }

    public ValueTask DisposeAsync() => Page.Context.DisposeAsync();

    private async Task CheckSkipAsync()
    {
        if (await Page.EvaluateAsync<string>("measures.awayBySkip()") is { Length: > 0 } away)
        {
            Find("skip link leads away", away);
            return;
        }

        await Page.EvaluateAsync("document.querySelector('.skip')?.focus()");
        await Page.Keyboard.PressAsync("Enter");

        // A moment for the page to follow; a link that leads nowhere is told with the rest.
        var arrived = false;
        for (var tries = 0; tries < 50 && !arrived; tries++)
        {
            arrived = await Page.EvaluateAsync<bool>("document.activeElement.id === 'main'");
            await Page.WaitForTimeoutAsync(arrived ? 0 : 100);
        }

        if (!arrived)
        {
            Find("skip link", "does not lead to the content");
        }
    }

    // What the browser says at its console comes beside the checks.
    private void Find(string check, params IEnumerable<string> offenders)
    {
        lock (found)
        {
            found.AddRange(offenders.Select(words => $"{check}: {words}"));
        }
    }

    [GeneratedRegex(@".{0,40}\d\s?(bar|mm|m³|ha|°C|cm|gal)\b")]
    private static partial Regex OtherUnit();
}
