using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A plan is taken back while a phone without signal still works by it.</summary>
[Collection("journeys")]
public sealed class WithdrawnPlanTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task What_ran_by_a_plan_that_was_taken_back_is_sent_and_what_was_only_begun_is_told()
    {
        var desk = await browser.DeskAsync(host.Address);
        await (await WeekDesk.OpenAsync(desk)).PublishAsync("Ana", "");
        var phone = await SetsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.KeptAsync();
        await phone.Page.Context.SetOfflineAsync(true);
        var ran = await phone.ConfirmFirstAsync("Ben", "4", "");
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^1 entry waiting"));
        var begun = phone.Page.Locator("form[data-set]:visible").First;
        var valve = (await begun.GetAttributeAsync("data-valve"))!;
        await begun.GetByRole(AriaRole.Button, new() { NameRegex = new("^Start") }).ClickAsync();
        await Expect(phone.OutboxLine).ToContainTextAsync($"{valve} running, only on this phone");

        await desk.GotoAsync("/changes");
        var changes = desk.Locator("table.changes tbody tr");
        var before = await changes.CountAsync();
        var published = changes.First;
        await published.Locator("summary").ClickAsync();
        await published.GetByLabel("Your name").FillAsync("Ana");
        await published.GetByRole(AriaRole.Button).ClickAsync();
        await Expect(changes).ToHaveCountAsync(before + 1);

        // The page as it is without any set; the phone's entry goes out from it.
        await phone.Page.RouteAsync("**/api/confirmations", route => route.AbortAsync());
        await phone.Page.Context.SetOfflineAsync(false);
        await phone.Page.GotoAsync("/sets");
        await phone.ReadyAsync();
        await Expect(phone.Page.Locator(".set-card")).ToHaveCountAsync(0);
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^1 entry waiting"));
        await phone.Page.UnrouteAsync("**/api/confirmations");
        await phone.Page.EvaluateAsync("dispatchEvent(new Event('online'))");
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^Nothing waits to be sent"));
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.State(ran)).ToContainTextAsync("Confirmed: 4 h");

        var left = phone.Page.Locator("#left-over li");
        await Expect(left).ToContainTextAsync($"{valve} was begun on this phone, never saved, and is not listed any more. Tell the manager what ran.");
        await left.GetByRole(AriaRole.Button, new() { Name = "I have read it" }).ClickAsync();
        await Expect(left).ToHaveCountAsync(0);
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.Page.Locator("#left-over")).ToBeHiddenAsync();
        await phone.Page.Context.CloseAsync();
        await desk.Context.CloseAsync();
    }
}
