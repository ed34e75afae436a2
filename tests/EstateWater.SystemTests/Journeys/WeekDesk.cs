using System.Globalization;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The manager's week page, open and live.</summary>
internal sealed class WeekDesk(IPage page)
{
    public ILocator FirstHours => page.Locator("table.block-hours input").First;

    /// <summary>Says something while a plan is being computed.</summary>
    public ILocator Computing => page.Locator(".desk-status");

    public static async Task<WeekDesk> OpenAsync(IPage page)
    {
        await page.GotoAsync("/week");

        // The prerendered page is replaced when the circuit is up; only then do events count.
        await Expect(page.Locator(".desk-bar")).ToHaveAttributeAsync("data-live", "true");
        return new WeekDesk(page);
    }

    /// <summary>How many sets, hours and how much water: “129 sets, 1347 h, 41 681 m³: each as a row”.</summary>
    public ILocator SetsCaption => page.Locator(".set-list > summary");

    public Task<string> SetsCaptionAsync() => SetsCaption.InnerTextAsync();

    /// <summary>Unfolds the rows of the sets.</summary>
    public Task ShowSetRowsAsync() => SetsCaption.ClickAsync();

    /// <summary>Changes the most urgent block's hours and waits for the plan; gives the block.</summary>
    public async Task<string> ChangeFirstHoursAsync(Func<double, double> change)
    {
        var block = (await FirstHours.GetAttributeAsync("id"))!["hours-".Length..];
        var field = page.Locator($"[id='hours-{block}']");
        var hours = change(double.Parse(await field.InputValueAsync(), CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture);
        await field.FillAsync(hours);
        await field.PressAsync("Enter");
        await Expect(page.Locator("tr.by-hand")).ToContainTextAsync(block);
        await Expect(Computing).ToBeEmptyAsync();
        return block;
    }

    /// <summary>Publishes what is planned. By is null where somebody is signed in.</summary>
    public async Task PublishAsync(string? by, string note)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Review and publish" }).ClickAsync();
        var dialog = page.GetByRole(AriaRole.Dialog);
        if (by is not null)
        {
            await dialog.GetByLabel("Your name").FillAsync(by);
        }

        await dialog.GetByLabel("Note to the irrigators").FillAsync(note);
        await dialog.GetByRole(AriaRole.Button, new() { NameRegex = new("^Publish") }).ClickAsync();
        await Expect(page.GetByText("Published. The irrigators see these sets now.")).ToBeVisibleAsync();
    }
}
