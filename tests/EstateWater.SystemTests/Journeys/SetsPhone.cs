using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The irrigator's page on a phone, its script running.</summary>
internal sealed class SetsPhone(IPage page)
{
    public IPage Page => page;

    public ILocator OutboxLine => page.Locator("#outbox-line");

    public static async Task<SetsPhone> OpenAsync(IPage page)
    {
        await page.GotoAsync("/sets");
        var phone = new SetsPhone(page);
        await phone.ReadyAsync();
        return phone;
    }

    public Task ReadyAsync() => Expect(page.Locator("html")).ToHaveAttributeAsync("data-outbox", "ready");

    /// <summary>Waits until the page, its style and its script are kept for use without signal.</summary>
    public Task KeptAsync() => KeptPage.WaitAsync(
        page,
        "estate-water-sets-1",
        "/sets", "/field/field.css", "/sets/page.js", "/field/outbox.js", "/field/store.js",
        "/field/page.js", "/field/quantity.js", "/field/words.js", "/field/clock.js", "/sets/drafts.js", "/sets/form.js",
        "/sets/left-over.js", "/sets/meter.js", "/sets/photo.js", "/sets/times.js");

    /// <summary>The state of a set, found by its number.</summary>
    public ILocator State(string set) => page.Locator($"#state-{set}");

    /// <summary>What looks like a slip in a set.</summary>
    public ILocator Hint(string set) => page.Locator($"#hint-{set}");

    /// <summary>Confirms the first set that waits for it; gives its number. Who is null where the phone is signed in.</summary>
    public async Task<string> ConfirmFirstAsync(string? who, string hours, string meter)
    {
        var form = page.Locator("form[data-set]:visible").First;
        var set = (await form.GetAttributeAsync("data-set"))!;
        if (who is not null)
        {
            await page.GetByLabel("Your name").FillAsync(who);
        }

        form = page.Locator($"form[data-set='{set}']");
        await form.Locator(".set-other > summary").ClickAsync();

        // The estate's clock stands at six, before tonight's sets: this one was run earlier.
        await form.GetByLabel("Opened at").FillAsync("00:15");
        await form.GetByLabel("Hours run").FillAsync(hours);
        await form.GetByLabel("or water used").FillAsync(meter);
        await form.GetByRole(AriaRole.Button, new() { NameRegex = new("^Save the hours") }).ClickAsync();
        return set;
    }
}
