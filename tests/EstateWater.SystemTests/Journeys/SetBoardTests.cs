using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>Sets dragged over the manager's board, with a mouse and with a finger, and the same without dragging.</summary>
[Collection("journeys")]
public sealed class SetBoardTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task A_set_is_dragged_to_another_night_as_its_form_moves_it_with_the_keyboard_alone()
    {
        var board = await DraggedBoard.OpenAsync(await browser.DeskAsync(host.Address));
        var before = await board.Week.SetsCaptionAsync();
        var lifted = await DraggedBoard.FormNameOfAsync(board.Bar);
        var other = await board.OtherNightAsync();
        var night = await other.Locator(".night-name").InnerTextAsync();
        await board.LiftAsync(board.Bar);
        await board.HangAsync(other, 0.3);
        await Expect(board.Words).ToHaveTextAsync(DraggedBoard.Place());
        var (valve, day, opens, hours) = await board.PlaceAsync();
        Assert.Equal(0, TimeOnly.ParseExact(opens, "HH:mm", CultureInfo.InvariantCulture).Minute % 15);

        await board.Page.Mouse.UpAsync();
        await Expect(board.Week.Computing).ToBeEmptyAsync();
        var dragged = await board.ChangesAsync();
        Assert.Contains($" to {day} {opens}", dragged, StringComparison.Ordinal);
        await Expect(board.Ghost).ToBeHiddenAsync();
        await Expect(board.Row($"{day} {opens}", valve)).ToBeVisibleAsync();
        await Expect(board.Page.Locator(".draft-changes [role=status]")).ToContainTextAsync("ceiling");
        Assert.DoesNotContain("#", board.Page.Url, StringComparison.Ordinal);

        await board.Page.GetByRole(AriaRole.Button, new() { Name = $"Undo the move of {valve}" }).ClickAsync();
        await Expect(board.Page.Locator(".draft-changes")).ToHaveCountAsync(0);
        await Expect(board.Week.Computing).ToBeEmptyAsync();
        Assert.Equal(before, await board.Week.SetsCaptionAsync());

        await board.MoveByKeyboardAsync(lifted, night, opens, hours);
        await Expect(board.Page.Locator(".draft-changes li")).ToContainTextAsync($"{day} {opens}");
        Assert.Equal(dragged, await board.ChangesAsync());
    }

    [Fact]
    public async Task The_end_of_a_set_is_dragged_to_other_hours_by_quarters()
    {
        var board = await DraggedBoard.OpenAsync(await browser.DeskAsync(host.Address));
        var bar = board.Bar;
        var before = double.Parse((await bar.GetAttributeAsync("data-quarters"))!, CultureInfo.InvariantCulture) / 4;
        var box = (await bar.Locator("rect").First.BoundingBoxAsync())!;
        await board.LiftAsync(bar.Locator(".end"));
        await board.Page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2), new() { Steps = 5 });
        await Expect(board.Words).ToHaveTextAsync(DraggedBoard.Place());
        var (valve, day, opens, hours) = await board.PlaceAsync();
        var after = double.Parse(hours, CultureInfo.InvariantCulture);
        Assert.InRange(after, (before / 2) - 0.5, (before / 2) + 0.75);
        Assert.Equal(0, after % 0.25);
        await board.Page.Mouse.UpAsync();
        await Expect(board.Page.Locator(".draft-changes li")).ToContainTextAsync($"{day} {opens} runs {hours} h instead of ");
        await Expect(board.Row($"{day} {opens}", valve)).ToContainTextAsync($"{hours} h");
    }

    [Fact]
    public async Task A_place_where_a_set_cannot_run_is_said_before_it_is_let_go_and_refused_after()
    {
        var board = await DraggedBoard.OpenAsync(await browser.DeskAsync(host.Address));
        var before = await board.Week.SetsCaptionAsync();
        var bar = board.Bar;
        var source = await DraggedBoard.SourceOfAsync(bar);
        await board.LiftAsync(bar);
        await board.HangAsync(board.Page.Locator($".night:not([data-source='{source}'])").First, 0.3);
        await Expect(board.Words).ToHaveTextAsync(new Regex($"^Not here\\. .* is on {source}: it cannot run on "));
        await Expect(board.Ghost).ToHaveClassAsync(new Regex("refused"));
        await board.Page.Mouse.UpAsync();
        await Expect(board.Page.GetByRole(AriaRole.Alert)).ToHaveTextAsync(new Regex($"Not changed\\. .* is on {source}: it cannot run on "));
        await Expect(board.Ghost).ToBeHiddenAsync();
        await Expect(board.Page.Locator(".draft-changes")).ToHaveCountAsync(0);
        Assert.Equal(before, await board.Week.SetsCaptionAsync());
    }

    [Fact]
    public async Task A_night_on_which_the_valve_is_closed_says_so_while_the_set_hangs_over_it()
    {
        var board = await DraggedBoard.OpenAsync(await browser.DeskAsync(host.Address));
        var other = await board.OtherNightAsync();
        var night = (await other.GetAttributeAsync("data-night"))!;
        var valve = await DraggedBoard.ValveOfAsync(board.Bar);
        await board.Page.GetByText("Close a valve", new() { Exact = true }).ClickAsync();
        await board.Page.Locator("#close-valve").SelectOptionAsync(valve);
        await board.Page.Locator("#close-from").SelectOptionAsync(night);
        await board.Page.Locator("#close-to").SelectOptionAsync(night);
        await board.Page.GetByRole(AriaRole.Button, new() { Name = "Close this valve" }).ClickAsync();
        await Expect(board.Page.Locator(".draft-changes li")).ToHaveCountAsync(1);
        await Expect(board.Week.Computing).ToBeEmptyAsync();

        await board.LiftAsync(board.Page.Locator($".bars a[aria-label^='{valve} ']").First);
        await board.HangAsync(other, 0.3);
        await Expect(board.Words).ToHaveTextAsync(new Regex($"^Not here\\. .* but {valve} closed on the night of "));
        await board.Page.Mouse.UpAsync();
        await Expect(board.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync($"but {valve} closed on the night of");
        await Expect(board.Page.Locator(".draft-changes li")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Escape_puts_a_set_back_and_a_click_still_leads_to_its_row()
    {
        var board = await DraggedBoard.OpenAsync(await browser.DeskAsync(host.Address));
        await board.LiftAsync(board.Bar);
        await board.HangAsync(await board.OtherNightAsync(), 0.3);
        await Expect(board.Words).ToBeVisibleAsync();
        await board.Page.Keyboard.PressAsync("Escape");
        await Expect(board.Ghost).ToBeHiddenAsync();
        await Expect(board.Words).ToBeHiddenAsync();
        await board.Page.Mouse.UpAsync();
        await Expect(board.Page.Locator(".draft-changes")).ToHaveCountAsync(0);
        Assert.Equal("", await board.Page.EvaluateAsync<string>("getSelection().toString()"));

        await board.Bar.Locator("rect").First.ClickAsync();
        await Expect(board.Page).ToHaveURLAsync(new Regex("#set-"));
        await Expect(board.Page.Locator(".draft-changes")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_finger_that_rests_drags_and_one_that_swipes_scrolls()
    {
        var board = await DraggedBoard.OpenAsync(await browser.PhoneAsync(host.Address));
        await board.Bar.ScrollIntoViewIfNeededAsync();
        var finger = await Finger.OnAsync(board.Page);
        var box = (await board.Bar.Locator("rect").First.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 3), box.Y + (box.Height / 2));

        var scrolled = await board.ScrolledAsync();
        await finger.DownAsync(x, y);
        await finger.MoveAsync(x, y - 120);
        await finger.UpAsync();
        await board.Page.WaitForFunctionAsync("from => scrollY > from + 50", scrolled);
        await Expect(board.Ghost).ToBeHiddenAsync();
        await Expect(board.Page.Locator(".draft-changes")).ToHaveCountAsync(0);

        // Fewer hours can be had under any plan.
        await board.Bar.ScrollIntoViewIfNeededAsync();
        box = (await board.Bar.Locator(".end").BoundingBoxAsync())!;
        (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        scrolled = await board.ScrolledAsync();
        await finger.DownAsync(x, y);
        await Expect(board.Ghost).ToBeVisibleAsync();
        await finger.MoveAsync(x - 30, y + 2);
        await Expect(board.Words).ToHaveTextAsync(DraggedBoard.Place());
        Assert.Equal(scrolled, await board.ScrolledAsync());
        var (_, day, opens, hours) = await board.PlaceAsync();
        await finger.UpAsync();
        await Expect(board.Page.Locator(".draft-changes li")).ToContainTextAsync($"{day} {opens} runs {hours} h instead of ");
    }
}
