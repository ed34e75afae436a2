using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The technician's page on a phone, its script running.</summary>
internal sealed class ReadingsPhone(IPage page)
{
    public IPage Page => page;

    public ILocator OutboxLine => page.Locator("#outbox-line");

    /// <summary>What became of the entries made on this phone, the newest first.</summary>
    public ILocator Mine => page.Locator("#mine .set-state");

    public ILocator Pressure => page.GetByLabel(new Regex("^Pressure of this leaf"));

    public ILocator Leaves => page.Locator("#leaves li");

    /// <summary>A leaf of the list, counted from one.</summary>
    public ILocator Leaf(int number) => Leaves.Nth(number - 1).GetByRole(AriaRole.Button);

    public ILocator Button(string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public ILocator Running => page.Locator("#running");

    public static async Task<ReadingsPhone> OpenAsync(IPage page)
    {
        await page.GotoAsync("/readings");
        var phone = new ReadingsPhone(page);
        await phone.ReadyAsync();
        return phone;
    }

    public Task ReadyAsync() => Expect(page.Locator("html")).ToHaveAttributeAsync("data-outbox", "ready");

    /// <summary>Waits until the page, its style and its scripts are kept for use without signal.</summary>
    public Task KeptAsync() => KeptPage.WaitAsync(
        page,
        "estate-water-readings-1",
        "/readings", "/field/field.css", "/taking/taking.css", "/taking/drafts.js", "/taking/form.js",
        "/taking/mine.js", "/taking/page.js", "/taking/statistics.js", "/taking/units.js", "/taking/window.js",
        "/field/clock.js", "/field/outbox.js", "/field/store.js", "/field/page.js", "/field/quantity.js", "/field/words.js");

    /// <summary>The first block of the round.</summary>
    public async Task<string> FirstStopAsync() => (await page.Locator("[data-stop]").First.GetAttributeAsync("data-stop"))!;

    /// <summary>What the round asks to be read there, from “5 leaves · stem · about 12:25”.</summary>
    public async Task<string> MeasureOfAsync(string block) =>
        (await page.Locator($"[data-stop='{block}'] .set-times").InnerTextAsync()).Split(" · ")[1];

    /// <summary>Opens a block of the round.</summary>
    public async Task ReadAsync(string block)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = $"Read {block}", Exact = true }).ClickAsync();
        await Expect(page.Locator("#take")).ToBeVisibleAsync();
    }

    /// <summary>Opens a block that need not be on the round, for something else than leaves.</summary>
    public async Task OpenOtherAsync(string block, string kind)
    {
        await page.GetByLabel("Another block").SelectOptionAsync(block);
        await page.GetByRole(AriaRole.Button, new() { Name = "Open", Exact = true }).ClickAsync();
        await page.GetByLabel(kind).CheckAsync();
    }

    public async Task AddLeavesAsync(params string[] pressures)
    {
        foreach (var pressure in pressures)
        {
            var before = await page.Locator("#leaves li").CountAsync();
            await Pressure.FillAsync(pressure);
            await page.Locator("#add-leaf").ClickAsync();
            await Expect(page.Locator("#leaves li")).ToHaveCountAsync(before + 1);
        }
    }

    /// <summary>Unfolds what is being read: kind, measure and name.</summary>
    public Task UnfoldAsync() => page.Locator("#about-line").ClickAsync();

    /// <summary>Waits until a pressure that was typed is on the phone for good: a browser that is killed earlier cannot have kept it.</summary>
    public Task TypedIsKeptAsync(string pressure) => page.WaitForFunctionAsync(
        """
        (pressure) => new Promise((resolve, reject) => {
          const opening = indexedDB.open("estate-water-readings-drafts");
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const all = opening.result.transaction("drafts").objectStore("drafts").getAll();
            all.onsuccess = () => { opening.result.close(); resolve(all.result.some((draft) => draft.fields.pressure === pressure)); };
          };
        })
        """,
        pressure);

    /// <summary>Saves and waits until the round is shown again.</summary>
    public async Task SaveAsync(string who)
    {
        // Once it is known it folds away as leaves are read, and cannot be filled again.
        if (await page.GetByLabel("Your name").InputValueAsync() != who)
        {
            await page.GetByLabel("Your name").FillAsync(who);
        }

        await page.Locator("#save").ClickAsync();
        await Expect(page.Locator("#round")).ToBeVisibleAsync();
    }
}
