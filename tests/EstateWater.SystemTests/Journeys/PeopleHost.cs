using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The real program as an estate runs it, where people sign in.</summary>
public sealed class PeopleHost : RunningHost
{
    /// <summary>Everyone's password here.</summary>
    public const string Password = "gate rain seven boots";

    private readonly SemaphoreSlim turn = new(1, 1);
    private bool hasManager;

    protected override bool IsDemo => false;

    /// <summary>Mara at her desk, signed in: the first time she sets the program up with the code from its console.</summary>
    public async Task<IPage> ManagerAsync(Browser browser)
    {
        var desk = await browser.DeskAsync(Address);
        await turn.WaitAsync();
        try
        {
            if (hasManager)
            {
                await SignInAsync(desk, "Mara");
                return desk;
            }

            await desk.GotoAsync("/week");
            await desk.GetByRole(AriaRole.Link, new() { Name = "Set up the first manager" }).ClickAsync();
            Assert.Empty(await Barriers.SeriousAsync(desk));
            await desk.GetByLabel("Code from the console").FillAsync(await FirstCode);
            await desk.GetByLabel("Your name").FillAsync("Mara");
            await desk.GetByLabel("Password").FillAsync(Password);
            await desk.GetByRole(AriaRole.Button, new() { Name = "Make me the manager" }).ClickAsync();
            await Expect(desk).ToHaveURLAsync(new Regex("/week$"));
            hasManager = true;
            return desk;
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Invites someone on the page of people; gives the path of the link.</summary>
    public static async Task<string> InviteAsync(IPage manager, string name, string role)
    {
        await manager.GotoAsync("/people");
        var form = manager.Locator(".people-form");
        await form.GetByLabel("Name").FillAsync(name);
        await form.Locator("select").SelectOptionAsync(new SelectOptionValue { Label = role });
        await form.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        return new Uri(await manager.GetByLabel("Link", new() { Exact = true }).InputValueAsync()).AbsolutePath;
    }

    /// <summary>Sets the first password behind a link.</summary>
    public static async Task JoinAsync(IPage page, string link)
    {
        await page.GotoAsync(link);
        await page.GetByLabel("New password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save and go on" }).ClickAsync();
    }

    /// <summary>Signs in from wherever that is asked.</summary>
    public static async Task SignInAsync(IPage page, string name)
    {
        await page.GotoAsync("/sign-in");
        await FillAsync(page, name);
    }

    /// <summary>Fills the form in and sends it.</summary>
    public static async Task FillAsync(IPage page, string name)
    {
        await page.GetByLabel("Your name").FillAsync(name);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("/sign-in", StringComparison.Ordinal));
    }
}
