using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>People come in, do what their role may, and lose nothing when their sign-in ends.</summary>
[Collection("journeys")]
public sealed class SignInJourneyTests(PeopleHost host, Browser browser) : IClassFixture<PeopleHost>
{
    [Fact]
    public async Task From_the_first_start_to_hours_that_an_invited_irrigator_confirmed()
    {
        var manager = await host.ManagerAsync(browser);
        await (await WeekDesk.OpenAsync(manager)).PublishAsync(null, "Filters first.");
        var link = await PeopleHost.InviteAsync(manager, "Ben", "irrigator");

        var page = await browser.PhoneAsync(host.Address);
        await PeopleHost.JoinAsync(page, link);
        await Expect(page).ToHaveURLAsync(new Regex("/sets$"));
        await Expect(page.GetByText("Published by Mara")).ToBeVisibleAsync();
        var phone = new SetsPhone(page);
        await phone.ReadyAsync();
        var set = await phone.ConfirmFirstAsync(null, "3,5", "");
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent"));
        await page.ReloadAsync();
        await Expect(phone.State(set)).ToContainTextAsync("Confirmed: 3.5 h (Ben,");
        await page.Context.CloseAsync();
        await manager.Context.CloseAsync();
    }

    [Fact]
    public async Task Entries_made_after_the_sign_in_ended_wait_on_the_phone_and_are_sent_after_the_next()
    {
        var manager = await host.ManagerAsync(browser);
        await (await WeekDesk.OpenAsync(manager)).PublishAsync(null, "Go slowly.");
        var page = await browser.PhoneAsync(host.Address);
        await PeopleHost.JoinAsync(page, await PeopleHost.InviteAsync(manager, "Cem", "irrigator"));
        var phone = new SetsPhone(page);
        await phone.ReadyAsync();
        await manager.GotoAsync("/people");
        await manager.GetByRole(AriaRole.Button, new() { Name = "Sign out everywhere: Cem" }).ClickAsync();
        await Expect(manager).ToHaveURLAsync(new Regex("/people$"));

        var set = await phone.ConfirmFirstAsync(null, "2", "");
        await Expect(phone.OutboxLine).ToContainTextAsync(new Regex("^1 entry waiting .* Sign in to send$"));
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Saved on this phone"));
        await phone.OutboxLine.GetByRole(AriaRole.Link, new() { Name = "Sign in to send" }).ClickAsync();
        await PeopleHost.FillAsync(page, "Cem");
        await Expect(page).ToHaveURLAsync(new Regex("/sets$"));
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^(Sent|✓|Confirmed: 2 h)"));
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^Nothing waits to be sent"));
        await page.ReloadAsync();
        await Expect(phone.State(set)).ToContainTextAsync("Confirmed: 2 h (Cem,");
        await page.Context.CloseAsync();
        await manager.Context.CloseAsync();
    }

    [Fact]
    public async Task Whoever_is_no_manager_any_more_publishes_nothing_from_a_page_still_open()
    {
        var mara = await host.ManagerAsync(browser);
        var nia = await browser.DeskAsync(host.Address);
        await PeopleHost.JoinAsync(nia, await PeopleHost.InviteAsync(mara, "Nia", "manager"));
        await WeekDesk.OpenAsync(nia);
        await mara.GotoAsync("/people");
        var card = mara.GetByRole(AriaRole.Article, new() { NameRegex = new("^Nia") });
        await card.Locator("select").SelectOptionAsync(new SelectOptionValue { Label = "owner" });
        await card.GetByRole(AriaRole.Button, new() { Name = "Change the role of Nia" }).ClickAsync();
        await Expect(card).ToContainTextAsync("owner: looks at everything");

        await nia.GetByRole(AriaRole.Button, new() { Name = "Review and publish" }).ClickAsync();
        await Expect(nia.GetByRole(AriaRole.Alert)).ToContainTextAsync("Your sign-in ended, and nothing more is taken from this page.");
        await Expect(nia.GetByRole(AriaRole.Dialog)).ToHaveCountAsync(0);
        await PeopleHost.SignInAsync(nia, "Nia");
        await Expect(nia).ToHaveURLAsync(new Regex("/owner$"));
        await nia.GotoAsync("/week");
        await Expect(nia.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("The week");
        await Expect(nia.Locator(".set-list > summary")).ToBeVisibleAsync();
        await Expect(nia.Locator("main button, main input")).ToHaveCountAsync(0);
        await nia.Context.CloseAsync();
        await mara.Context.CloseAsync();
    }

    [Fact]
    public async Task A_passkey_is_made_and_signs_in_without_a_password()
    {
        var manager = await host.ManagerAsync(browser);
        var link = await PeopleHost.InviteAsync(manager, "Pia", "irrigator");

        var page = await browser.PhoneAsync(host.Address);
        await AddAuthenticatorAsync(page);
        await PeopleHost.JoinAsync(page, link);
        await page.GotoAsync("/account");
        await page.GetByLabel("What to call it").FillAsync("my phone");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a passkey here" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("The passkey is kept.");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Remove “my phone”" })).ToBeVisibleAsync();
        Assert.Empty(await Barriers.SeriousAsync(page));

        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/sets$"));

        // Taken out on the page, it opens nothing any more.
        await page.GotoAsync("/account");
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove “my phone”" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Remove “my phone”" })).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert).First).ToContainTextAsync("This passkey was not accepted");
        await page.Context.CloseAsync();
        await manager.Context.CloseAsync();
    }

    [Fact]
    public async Task A_passkey_belongs_to_a_name_and_an_address_of_numbers_says_so()
    {
        var page = await browser.PhoneAsync(new UriBuilder(host.Address) { Host = "127.0.0.1" }.Uri);
        var manager = await host.ManagerAsync(browser);
        var link = await PeopleHost.InviteAsync(manager, "Ned", "irrigator");
        await PeopleHost.JoinAsync(page, link);
        await page.GotoAsync("/account");
        await Expect(page.GetByText("they need https and a name in place of a number")).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Make a passkey here" })).ToBeHiddenAsync();
        await page.Context.CloseAsync();
        await manager.Context.CloseAsync();
    }

    [Fact]
    public async Task A_link_is_copied_by_its_button()
    {
        var manager = await host.ManagerAsync(browser);
        await manager.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        var path = await PeopleHost.InviteAsync(manager, "Cora", "irrigator");
        await manager.GetByRole(AriaRole.Button, new() { Name = "Copy the link" }).ClickAsync();
        await Expect(manager.GetByText("Copied.", new() { Exact = true })).ToBeVisibleAsync();
        Assert.EndsWith(path, await manager.EvaluateAsync<string>("navigator.clipboard.readText()"), StringComparison.Ordinal);
        await manager.Context.CloseAsync();
    }

    [Fact]
    public async Task The_pages_about_signing_in_have_no_serious_barrier_and_suit_a_phone()
    {
        var manager = await host.ManagerAsync(browser);
        var link = await PeopleHost.InviteAsync(manager, "Dora", "technician");
        Assert.Empty(await Barriers.SeriousAsync(manager));
        var page = await browser.PhoneAsync(host.Address);
        foreach (var address in new[] { "/sign-in", "/sign-in?lang=es", link, "/join/nothing" })
        {
            await page.GotoAsync(address);
            Assert.Empty(await Barriers.SeriousAsync(page));
            Assert.Empty(await Barriers.SmallTargetsAsync(page));
            Assert.Equal(390, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        }

        await page.GotoAsync(link + "?lang=en");
        await PeopleHost.JoinAsync(page, link);
        foreach (var address in new[] { "/account", "/people" })
        {
            await page.GotoAsync(address);
            Assert.Empty(await Barriers.SeriousAsync(page));
            Assert.Equal(390, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        }

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("This page is not for your role");
        await page.Context.CloseAsync();
        await manager.Context.CloseAsync();
    }

    // Chromium's own stand-in for a phone's finger or face.
    private static async Task AddAuthenticatorAsync(IPage page)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("WebAuthn.enable");
        await session.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2",
                ["transport"] = "internal",
                ["hasResidentKey"] = true,
                ["hasUserVerification"] = true,
                ["isUserVerified"] = true,
                ["automaticPresenceSimulation"] = true,
            },
        });
    }
}
