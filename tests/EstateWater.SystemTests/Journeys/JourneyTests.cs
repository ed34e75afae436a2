using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static EstateWater.SystemTests.Journeys.Keys;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What the people of an estate do in a week, in a real browser against the real program.</summary>
[Collection("journeys")]
public sealed class JourneyTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task A_block_is_opened_from_the_map_with_the_keyboard_alone()
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.GotoAsync("/");
        await TabToAsync(desk, "[data-map] a");
        var first = await desk.EvaluateAsync<string>("document.activeElement.dataset.block");

        // From the first block at least one arrow leads on.
        foreach (var key in new[] { "ArrowRight", "ArrowLeft", "ArrowUp", "ArrowDown" })
        {
            await desk.Keyboard.PressAsync(key);
        }

        var block = await desk.EvaluateAsync<string>("document.activeElement.dataset.block");
        Assert.False(string.IsNullOrEmpty(first));
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk).ToHaveURLAsync(new Regex($"/blocks/{Regex.Escape(block)}$"));
        await Expect(desk.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync(block);
    }

    [Fact]
    public async Task A_week_is_changed_published_run_and_confirmed()
    {
        var desk = await browser.DeskAsync(host.Address);
        var week = await WeekDesk.OpenAsync(desk);
        var block = await week.ChangeFirstHoursAsync(hours => hours + 0.5);
        await Expect(desk.GetByRole(AriaRole.Button, new() { Name = $"Undo the hours of {block}" })).ToBeEnabledAsync();

        // Where nights are full the half hour comes from the sets beside it, so the sum may stay.
        var changed = desk.Locator(".draft-changes tr", new() { Has = desk.GetByRole(AriaRole.Rowheader, new() { Name = block, Exact = true }) });
        await Expect(changed).ToContainTextAsync(new Regex(@"[\d.]+\sh was [\d.]+\sh"));
        await week.PublishAsync("Ana", "Filters first.");
        await Expect(desk.Locator("#tonight ~ p")).ToContainTextAsync(new Regex("^0 of \\d+ sets? confirmed"));
        await desk.EvaluateAsync("window.stillThis = true");

        var phone = await SetsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await Expect(phone.Page.Locator(".plan-note")).ToHaveTextAsync("Filters first.");
        var valve = await phone.ConfirmFirstAsync("Ben", "3,5", "90.5");
        await Expect(phone.State(valve)).ToHaveTextAsync(new Regex("^Sent \\d\\d:\\d\\d · 3.5 h$"));
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^Nothing waits to be sent · last sent \\d\\d:\\d\\d$"));

        // The manager's page hears of it by itself.
        await Expect(desk.Locator("table.tonight")).ToContainTextAsync("3.5 h, meter 90.5 m³ (Ben");
        Assert.True(await desk.EvaluateAsync<bool>("window.stillThis === true"));
        await phone.Page.ReloadAsync();
        await Expect(phone.State(valve)).ToContainTextAsync("Confirmed: 3.5 h");
    }

    [Fact]
    public async Task Hours_change_by_arrow_keys_and_a_mistake_is_named()
    {
        var desk = await browser.DeskAsync(host.Address);
        var week = await WeekDesk.OpenAsync(desk);
        var field = week.FirstHours;
        await field.FillAsync("plenty");
        await field.PressAsync("Tab");
        await Expect(desk.GetByRole(AriaRole.Alert)).ToHaveTextAsync("Hours must be between 0 and 240, like 6.5");
        await Expect(field).ToHaveValueAsync("plenty");
        await field.FillAsync("2");
        await field.PressAsync("ArrowUp");
        await Expect(field).ToHaveValueAsync("2.25");
        await Expect(week.Computing).ToBeEmptyAsync();
        await desk.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Undo the hours") }).ClickAsync();
        await Expect(week.Computing).ToBeEmptyAsync();
        await Expect(field).Not.ToHaveValueAsync("2.25");
    }

    [Fact]
    public async Task A_valve_is_closed_kept_over_a_reload_and_taken_back_with_the_keyboard_alone()
    {
        var desk = await browser.DeskAsync(host.Address);
        var week = await WeekDesk.OpenAsync(desk);
        var before = await week.SetsCaptionAsync();
        var valve = (await desk.Locator("table.sets tbody th").First.TextContentAsync())!;
        await TabToAsync(desk, ".try-forms summary");
        await desk.Keyboard.PressAsync("Enter");
        await TabToAsync(desk, "#close-valve");
        await desk.Keyboard.TypeAsync(valve);
        await TabToAsync(desk, ".try-form button");
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.Locator(".draft-changes li")).ToContainTextAsync($"{valve} closed from the night of");
        await Expect(desk.Locator(".draft-changes [role=status]")).ToContainTextAsync(new Regex($"^With {valve} closed .* ceiling.*less is used\\.$"));
        Assert.DoesNotContain(valve, await desk.Locator("table.sets tbody th").AllTextContentsAsync());

        await desk.ReloadAsync();
        await Expect(desk.Locator(".draft-changes [role=status]")).ToContainTextAsync($"With {valve} closed");
        Assert.NotEqual(before, await week.SetsCaptionAsync());

        await TabToAsync(desk, ".draft-changes button");
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.Locator(".draft-changes")).ToHaveCountAsync(0);
        await Expect(week.Computing).ToBeEmptyAsync();
        Assert.Equal(before, await week.SetsCaptionAsync());
    }

    [Fact]
    public async Task A_set_is_moved_to_another_clock_time_and_published_as_shown()
    {
        var desk = await browser.DeskAsync(host.Address);
        var week = await WeekDesk.OpenAsync(desk);
        await desk.Locator("summary", new() { HasText = "Move a set" }).ClickAsync();
        var set = await desk.Locator("#move-set option").First.InnerTextAsync();
        await desk.Locator("#move-opens").FillAsync("04:30");
        await desk.Locator("#move-hours").FillAsync("2,5");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Move this set" }).ClickAsync();
        await Expect(desk.Locator(".draft-changes li")).ToContainTextAsync(new Regex(" to .* 04:30, 2\\.5 h instead of "));
        await Expect(desk.Locator(".draft-changes [role=status]")).ToBeVisibleAsync();
        var valve = set.Split(',')[0];
        await week.ShowSetRowsAsync();
        await Expect(desk.Locator("table.sets tbody tr").Filter(new() { HasText = "04:30" }).Filter(new() { HasText = "2.5 h" }).Filter(new() { HasText = valve }).First).ToBeVisibleAsync();
        await desk.GetByRole(AriaRole.Button, new() { Name = "Review and publish" }).ClickAsync();
        await Expect(desk.GetByRole(AriaRole.Dialog)).ToContainTextAsync($"Changed by hand, and kept with the plan: {valve} moves from");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Keep working" }).ClickAsync();
        await week.PublishAsync("Ana", "As moved.");
    }

    [Fact]
    public async Task The_publish_dialog_begins_at_what_can_be_used_and_Escape_closes_it_and_keeps_what_was_typed()
    {
        var desk = await browser.DeskAsync(host.Address);
        await WeekDesk.OpenAsync(desk);
        var button = desk.GetByRole(AriaRole.Button, new() { Name = "Review and publish" });
        var dialog = desk.GetByRole(AriaRole.Dialog);
        await button.FocusAsync();
        await desk.Keyboard.PressAsync("Enter");

        // The sets that differ, where any do; else the first field.
        await Expect(dialog.Locator("[role=region], input").First).ToBeFocusedAsync();
        await TabToAsync(desk, "#published-note");
        await desk.Keyboard.TypeAsync("Check the filter");
        await desk.Keyboard.PressAsync("Escape");
        await Expect(dialog).ToHaveCountAsync(0);
        await Expect(button).ToBeFocusedAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(dialog.GetByLabel("Note to the irrigators")).ToHaveValueAsync("Check the filter");
    }

    [Fact]
    public async Task What_cannot_be_pressed_is_seen_by_night()
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await WeekDesk.OpenAsync(desk);
        var undo = desk.GetByRole(AriaRole.Button, new() { Name = "Undo", Exact = true });
        await Expect(undo).ToBeDisabledAsync();

        // The night's soft ink.
        await Expect(undo).ToHaveCSSAsync("color", "rgb(174, 183, 176)");
    }

    [Fact]
    public async Task A_bar_of_the_board_leads_to_its_row_by_keyboard()
    {
        var desk = await browser.DeskAsync(host.Address);
        await WeekDesk.OpenAsync(desk);
        var bar = desk.Locator(".bars a").First;
        var row = (await bar.GetAttributeAsync("href"))!.Split('#')[1];
        await bar.FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.Locator($"tr[id='{row}']")).ToBeInViewportAsync();
        await Expect(desk.Locator(".set-list")).ToHaveAttributeAsync("open", "");
        Assert.Equal(row, await desk.EvaluateAsync<string>("document.querySelector('tr:target').id"));
    }

    [Fact]
    public async Task A_block_is_found_on_the_week_by_typing_and_its_hours_are_next()
    {
        var desk = await browser.DeskAsync(host.Address);
        await WeekDesk.OpenAsync(desk);
        var rows = desk.Locator("table.block-hours tbody tr:visible");
        var all = await rows.CountAsync();
        var code = (await rows.Last.GetAttributeAsync("data-block"))!;
        await desk.Keyboard.PressAsync("/");
        await desk.Keyboard.TypeAsync(code);
        await Expect(desk.Locator("[data-found]")).ToHaveTextAsync(new Regex($"^\\d+ of {all} blocks$"));
        Assert.InRange(await rows.CountAsync(), 1, all - 1);
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.Locator($"[id='hours-{code}']")).ToBeFocusedAsync();
        await Expect(desk.Locator($"[id='hours-{code}']")).ToBeInViewportAsync();
        await Expect(rows).ToHaveCountAsync(all);
    }

    [Fact]
    public async Task Blocks_are_found_by_typing_and_compared_with_the_keyboard_alone()
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.GotoAsync("/");
        var row = desk.Locator("[data-list] tbody tr");
        var code = (await row.First.GetAttributeAsync("data-block"))!;
        var all = await row.CountAsync();
        await desk.Keyboard.PressAsync("/");
        await desk.Keyboard.TypeAsync(code);
        await Expect(desk.Locator("[data-found]")).ToHaveTextAsync(new Regex($"^\\d+ of {all} blocks$"));
        var shown = await desk.Locator("[data-list] tbody tr:visible").CountAsync();
        Assert.InRange(shown, 1, all - 1);
        Assert.Equal(all - shown, await desk.Locator("[data-map] a.away").CountAsync());
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync(code);
        await desk.GoBackAsync();
        await desk.Keyboard.PressAsync("/");
        await desk.Keyboard.TypeAsync(code);
        await desk.Keyboard.PressAsync("Escape");
        await Expect(desk.Locator("[data-list] tbody tr:visible")).ToHaveCountAsync(all);
        for (var block = 0; block < 2; block++)
        {
            await row.Nth(block).Locator("input").FocusAsync();
            await desk.Keyboard.PressAsync("Space");
        }

        await desk.GetByRole(AriaRole.Button, new() { Name = "Compare the ticked blocks" }).FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await Expect(desk.Locator(".compared")).ToHaveCountAsync(2);
        await Expect(desk.Locator(".compared h2").First).ToContainTextAsync(code);
    }
}
