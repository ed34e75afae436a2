using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>Entries made without signal, or against a server that misbehaves, are kept and arrive once.</summary>
[Collection("journeys")]
public sealed partial class OutboxTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>, IAsyncLifetime
{
    private SetsPhone phone = null!;

    public async ValueTask InitializeAsync()
    {
        var desk = await browser.DeskAsync(host.Address);
        await (await WeekDesk.OpenAsync(desk)).PublishAsync("Ana", "Go slowly.");
        await desk.Context.CloseAsync();
        phone = await SetsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.KeptAsync();
    }

    public async ValueTask DisposeAsync() => await phone.Page.Context.CloseAsync();

    [Fact]
    public async Task Without_signal_an_entry_is_kept_through_a_reload_and_sent_once()
    {
        var posts = Answers.To(phone.Page, "/api/confirmations");
        await phone.Page.Context.SetOfflineAsync(true);
        var set = await phone.ConfirmFirstAsync("Ben", "4", "");
        await Expect(phone.State(set)).ToHaveTextAsync(SavedRegex());
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^1 entry waiting"));

        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(SavedRegex());
        await Expect(phone.Page.Locator("#kept-line")).ToContainTextAsync("No signal: this list was kept on this phone");

        posts.Clear();
        await phone.Page.Context.SetOfflineAsync(false);
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent"));
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^Nothing waits to be sent"));
        Assert.Equal([201], posts);
        await phone.Page.ReloadAsync();
        await Expect(phone.State(set)).ToContainTextAsync("Confirmed: 4 h");
    }

    [Theory]
    [InlineData("text/html", "<html>Please sign in</html>")]
    [InlineData("application/json", """{ "ok": true }""")]
    public async Task A_page_that_answers_200_in_place_of_the_server_clears_nothing(string type, string body)
    {
        await phone.Page.RouteAsync("**/api/confirmations", route => route.FulfillAsync(new()
        {
            Status = 200,
            ContentType = type,
            Body = body,
        }));
        var answered = phone.Page.WaitForResponseAsync("**/api/confirmations");
        var set = await phone.ConfirmFirstAsync("Ben", "2", "");
        await answered;

        // The answer is there; half a second is ample for a script that would take it for a receipt.
        await phone.Page.WaitForTimeoutAsync(500);
        await Expect(phone.State(set)).ToHaveTextAsync(SavedRegex());
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^1 entry waiting"));
        await phone.Page.UnrouteAsync("**/api/confirmations");
        await phone.Page.EvaluateAsync("dispatchEvent(new Event('online'))");
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent"));
    }

    [Fact]
    public async Task A_lost_answer_is_asked_for_again_and_stored_once()
    {
        var lost = new TaskCompletionSource<int>(TaskCreationOptions.RunContinuationsAsynchronously);
        await phone.Page.RouteAsync("**/api/confirmations", async route =>
        {
            var answer = await route.FetchAsync();
            await route.AbortAsync();
            lost.TrySetResult(answer.Status);
        });
        var set = await phone.ConfirmFirstAsync("Ben", "2,5", "");
        Assert.Equal(201, await lost.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken));
        await Expect(phone.State(set)).ToHaveTextAsync(SavedRegex());

        // Counted before the way is free again: the phone may try by itself at any moment.
        var posts = Answers.To(phone.Page, "/api/confirmations");
        await phone.Page.UnrouteAsync("**/api/confirmations");
        await phone.Page.EvaluateAsync("dispatchEvent(new Event('online'))");
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent"));

        // 200, not 201: it was stored the first time.
        Assert.Equal([200], posts);
    }

    [Fact]
    public async Task A_set_that_someone_else_confirmed_is_refused_with_the_reason()
    {
        var other = await SetsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        var set = await other.ConfirmFirstAsync("Cem", "5", "");
        await Expect(other.State(set)).ToHaveTextAsync(new Regex("^Sent"));
        await other.Page.Context.CloseAsync();
        Assert.Equal(set, await phone.ConfirmFirstAsync("Ben", "4", ""));
        await Expect(phone.State(set)).ToHaveTextAsync("Not taken: Cem confirmed this set already. Tell the manager if your figures differ.");
    }

    [Fact]
    public async Task An_entry_refused_for_a_set_that_is_not_listed_is_told_until_it_is_read()
    {
        await phone.Page.EvaluateAsync(
            """
            async () => {
                const { newId, Outbox } = await import("/field/outbox.js");
                const outbox = new Outbox({ name: "estate-water-sets", endpoint: "api/confirmations", shown: () => {} });
                const now = new Date().toISOString();
                await outbox.keep({ entryId: newId(), setId: 4711, startedAt: now, hours: 3, confirmedBy: "Ben", enteredAt: now });
            }
            """);
        await phone.Page.ReloadAsync();
        var told = phone.Page.Locator("#left-over li");
        await Expect(told).ToContainTextAsync("Not taken: There is no set 4711. It may belong to a plan that was taken back; tell the manager.");
        await told.GetByRole(AriaRole.Button, new() { Name = "I have read it" }).ClickAsync();
        await Expect(told).ToHaveCountAsync(0);
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.Page.Locator("#left-over")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_set_that_could_not_run_needs_a_reason()
    {
        var (set, form) = await FirstFormAsync();
        await phone.Page.GetByLabel("Your name").FillAsync("Ben");
        await form.Locator(".set-other > summary").ClickAsync();
        var save = form.GetByRole(AriaRole.Button, new() { NameRegex = new("could not run") });
        await save.ClickAsync();
        await Expect(form.GetByText("Choose what went wrong")).ToBeVisibleAsync();
        await form.GetByLabel("other").CheckAsync();
        await save.ClickAsync();
        await Expect(form.GetByText("Say in a few words what went wrong")).ToBeVisibleAsync();
        await form.GetByLabel("In words").FillAsync("Leak at the filter");
        await save.ClickAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent .* could not run: other: Leak at the filter$"));
    }

    [Fact]
    public async Task Without_signal_a_set_is_started_stopped_photographed_and_sent_once_when_signal_returns()
    {
        var posts = Answers.To(phone.Page, "/api/confirmations");
        await phone.Page.Context.SetOfflineAsync(true);
        var (set, form) = await FirstFormAsync();
        await phone.Page.GetByLabel("Your name").FillAsync("Ben");
        await form.GetByRole(AriaRole.Button, new() { NameRegex = new("^Start") }).ClickAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^● Running since \\d\\d:\\d\\d"));
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^V\\d\\d running, only on this phone$"));

        // The clock stands at six in the morning, the set is planned for the night.
        await Expect(phone.Hint(set)).ToHaveTextAsync(new Regex("^\\d+ h before the plan: really\\?$"));

        // Closing the browser loses nothing: the set runs on.
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^● Running since"));
        await form.GetByRole(AriaRole.Button, new() { NameRegex = new("^Stop") }).ClickAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Stopped after [\\d.]+ h · not saved yet$"));
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^V\\d\\d not saved yet$"));
        await Expect(phone.Hint(set)).ToHaveTextAsync(new Regex("before the plan: really\\? Planned [\\d.]+ h: really 0\\.\\d+\\?$"));
        await Expect(form.Locator(".set-keep")).ToBeFocusedAsync();
        await form.Locator(".set-other > summary").ClickAsync();
        await form.GetByLabel("Photo").SetInputFilesAsync(new FilePayload { Name = "valve.png", MimeType = "image/png", Buffer = await phone.Page.ScreenshotAsync() });
        await Expect(form.Locator(".photo-kept")).ToHaveTextAsync(new Regex("^Photo kept on this phone, \\d+ kB$"));
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await form.Locator(".set-other > summary").ClickAsync();
        await form.GetByLabel("Hours run").FillAsync("1,5");
        await form.Locator(".set-save").ClickAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Saved on this phone .* 1.5 h · photo not sent yet$"));

        posts.Clear();
        await phone.Page.Context.SetOfflineAsync(false);
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent .* 1.5 h · photo sent$"));
        Assert.Equal([201, 201], posts);
        await phone.Page.ReloadAsync();
        await Expect(phone.State(set)).ToContainTextAsync("Confirmed: 1.5 h");
        Assert.Equal(200, (await phone.Page.APIRequest.GetAsync(new Uri(host.Address, (await phone.Page.Locator(".set-photo").First.GetAttributeAsync("href"))!).ToString())).Status);
    }

    [Fact]
    public async Task A_sent_entry_is_corrected_and_the_correction_counts()
    {
        var set = await phone.ConfirmFirstAsync("Ben", "4", "");
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent .* 4 h$"));
        var card = phone.Page.Locator("article", new() { Has = phone.State(set) });
        await card.GetByRole(AriaRole.Button, new() { NameRegex = new("^Correct") }).ClickAsync();
        await Expect(card.GetByLabel("Hours run")).ToHaveValueAsync("4");
        await card.GetByLabel("Hours run").FillAsync("3");
        await card.Locator(".set-save").ClickAsync();
        await Expect(phone.State(set)).ToHaveTextAsync(new Regex("^Sent .* 3 h$"));
        await phone.Page.ReloadAsync();
        await Expect(phone.State(set)).ToContainTextAsync(new Regex("Confirmed: 3 h .*, corrected\\)"));
    }

    [Fact]
    public async Task Impossible_hours_are_named_by_the_field_and_nothing_is_kept()
    {
        var set = await phone.ConfirmFirstAsync("Ben", "25", "");
        await Expect(phone.Page.Locator($"#hours-error-{set}")).ToHaveTextAsync("Hours must be between 0 and 24, like 6.5");
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^V\\d\\d not saved yet$"));
    }

    [Fact]
    public async Task Sets_stand_on_low_cards_with_one_large_action_each()
    {
        var (set, form) = await FirstFormAsync();
        var card = phone.Page.Locator("article", new() { Has = phone.State(set) });
        await Expect(form.GetByRole(AriaRole.Button)).ToHaveCountAsync(1);
        await Expect(form.GetByRole(AriaRole.Button)).ToHaveTextAsync(new Regex("^Start V"));

        // Four of them are seen at once on a phone that is 844 high.
        Assert.InRange((await card.BoundingBoxAsync())!.Height, 1, 844 / 4);
        Assert.True((await form.GetByRole(AriaRole.Button).BoundingBoxAsync())!.Height >= 56);

        // With keys alone all else is two steps away.
        await form.Locator(".set-start").FocusAsync();
        await phone.Page.Keyboard.PressAsync("Tab");
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(form.GetByLabel("Hours run")).ToBeVisibleAsync();
        await Expect(form.GetByLabel("Photo")).ToBeVisibleAsync();
        await Expect(form.GetByLabel("pump down")).ToBeVisibleAsync();
    }

    private async Task<(string Set, ILocator Form)> FirstFormAsync()
    {
        var set = (await phone.Page.Locator("form[data-set]:visible").First.GetAttributeAsync("data-set"))!;
        return (set, phone.Page.Locator($"form[data-set='{set}']"));
    }

    [GeneratedRegex(@"^Saved on this phone \d\d:\d\d")]
    private static partial Regex SavedRegex();
}
