using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The board of sets on the manager's week page.</summary>
internal sealed partial class DraggedBoard(IPage page, WeekDesk week, string set)
{
    public IPage Page => page;

    public WeekDesk Week => week;

    /// <summary>The first set whose valve has a night on which it does not open.</summary>
    public ILocator Bar => page.Locator($".bars a[data-set='{set}']").First;

    /// <summary>Where a lifted set would stand.</summary>
    public ILocator Ghost => page.Locator(".drag-ghost");

    /// <summary>What it would mean to let it go.</summary>
    public ILocator Words => page.Locator(".drag-words");

    public static async Task<DraggedBoard> OpenAsync(IPage page)
    {
        var week = await WeekDesk.OpenAsync(page);
        await page.Locator(".bars a").First.WaitForAsync();
        await week.ShowSetRowsAsync();
        var set = await page.EvaluateAsync<string>(
            """
            () => [...document.querySelectorAll('.bars a')].find(bar => {
                const valve = bar.getAttribute('aria-label').split(' ')[0];
                return [...bar.closest('.nights').children].some(night => !night.querySelector(`.bars a[aria-label^="${valve} "]`));
            }).dataset.set
            """);
        return new DraggedBoard(page, week, set);
    }

    /// <summary>“V01: Thu 22 Jan 22:00 to 02:00, 4 h”, and what others make of it.</summary>
    [GeneratedRegex(@"^(\S+): (\w+ \d+ \w+) (\d\d:\d\d) to \d\d:\d\d, ([\d.]+) h")]
    public static partial Regex Place();

    public static Task<string> SourceOfAsync(ILocator bar) => bar.EvaluateAsync<string>("bar => bar.closest('.night').dataset.source");

    /// <summary>The beginning of a set's name in the form that moves it: “V01, Thu 22 Jan 22:00”.</summary>
    public static async Task<string> FormNameOfAsync(ILocator bar) =>
        Regex.Replace((await bar.GetAttributeAsync("aria-label"))!, @"^(\S+) .*on [^,]+, (.* \d\d:\d\d) to .*$", "$1, $2");

    public static async Task<string> ValveOfAsync(ILocator bar) => (await bar.GetAttributeAsync("aria-label"))!.Split(' ')[0];

    public ILocator Row(string opens, string valve) =>
        page.Locator("table.sets tbody tr").Filter(new() { HasText = opens }).Filter(new() { HasText = valve }).First;

    /// <summary>A night of the bar's source on which its valve does not open.</summary>
    public async Task<ILocator> OtherNightAsync() => page.Locator($".night[data-source='{await SourceOfAsync(Bar)}']")
        .Filter(new() { HasNot = page.Locator($".bars a[aria-label^='{await ValveOfAsync(Bar)} ']") })
        .Last;

    public async Task LiftAsync(ILocator bar)
    {
        await bar.ScrollIntoViewIfNeededAsync();
        var box = (await bar.Locator("rect").First.Or(bar).First.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
    }

    /// <summary>Holds what was lifted over a night, at a share of its width.</summary>
    public async Task HangAsync(ILocator night, double share)
    {
        var box = (await night.Locator(".bars").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync((float)(box.X + (box.Width * share)), box.Y + 8, new() { Steps = 12 });
    }

    /// <summary>What the words say: valve, day, clock time, hours.</summary>
    public async Task<(string Valve, string Day, string Opens, string Hours)> PlaceAsync()
    {
        var place = Place().Match(await Words.InnerTextAsync());
        return (place.Groups[1].Value, place.Groups[2].Value, place.Groups[3].Value, place.Groups[4].Value);
    }

    /// <summary>The same by the form, with the keyboard alone. The form begins with the set that opens first.</summary>
    public async Task MoveByKeyboardAsync(string set, string day, string opens, string hours)
    {
        await Keys.TabToAsync(page, ".try-forms details:nth-child(3) summary");
        await page.Keyboard.PressAsync("Enter");
        await ChooseAsync("#move-set", set);

        // The other fields take the set's place once it is known.
        var chosen = await page.Locator("#move-set").InputValueAsync();
        await Expect(page.Locator("form[aria-label='Move a set']")).ToHaveAttributeAsync("data-set", chosen);
        await ChooseAsync("#move-night", day);
        var clock = TimeOnly.ParseExact(opens, "HH:mm", CultureInfo.InvariantCulture);
        await TypeAsync("#move-opens", clock.ToString("hhmmtt", CultureInfo.InvariantCulture));
        await TypeAsync("#move-hours", hours);
        await page.Keyboard.PressAsync("Enter");
    }

    private async Task TypeAsync(string field, string keys)
    {
        await Keys.TabToAsync(page, field);
        await page.Keyboard.TypeAsync(keys);
    }

    private async Task ChooseAsync(string field, string begins)
    {
        await Keys.TabToAsync(page, field);
        await page.Keyboard.PressAsync("Home");
        for (var steps = await page.EvaluateAsync<int>("document.activeElement.options.length"); steps > 0; steps--)
        {
            if ((await page.EvaluateAsync<string>("document.activeElement.selectedOptions[0].text")).StartsWith(begins, StringComparison.Ordinal))
            {
                return;
            }

            await page.Keyboard.PressAsync("ArrowDown");
        }

        Assert.Fail($"Arrow keys never came to “{begins}” in {field}.");
    }

    public Task<string> ChangesAsync() => page.Locator(".draft-changes li").InnerTextAsync();

    public Task<double> ScrolledAsync() => page.EvaluateAsync<double>("scrollY");
}
