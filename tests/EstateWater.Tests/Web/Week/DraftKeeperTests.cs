using Bunit;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Week;

namespace EstateWater.Tests.Web.Week;

public sealed class DraftKeeperTests : BunitContext
{
    private const string Key = "week-changes-2026-01-20";

    private static readonly DateOnly Today = new(2026, 1, 20);

    private static readonly WeekEdits Edits = WeekEdits.None.WithHours("B01", 6.5, []).With(new SourceOut("dam", Today, Today));

    [Fact]
    public async Task Changes_are_kept_in_the_tab_under_the_day_and_read_back()
    {
        JSInterop.SetupVoid("sessionStorage.setItem", _ => true).SetVoidResult();
        await new DraftKeeper(JSInterop.JSRuntime, Today).KeepAsync(Edits);
        var kept = Assert.Single(JSInterop.VerifyInvoke("sessionStorage.setItem", 1)).Arguments;
        Assert.Equal(Key, kept[0]);
        JSInterop.Setup<string?>("sessionStorage.getItem", Key).SetResult((string)kept[1]!);
        var back = await new DraftKeeper(JSInterop.JSRuntime, Today).ReadAsync();
        Assert.Equal(Edits.HoursByHand, back.HoursByHand);
        Assert.Equal(Edits.Changes, back.Changes);
    }

    [Fact]
    public async Task What_has_not_changed_is_not_written_again()
    {
        JSInterop.SetupVoid("sessionStorage.setItem", _ => true).SetVoidResult();
        var keeper = new DraftKeeper(JSInterop.JSRuntime, Today);
        await keeper.KeepAsync(Edits);
        await keeper.KeepAsync(Edits);
        JSInterop.VerifyInvoke("sessionStorage.setItem", 1);
    }

    [Fact]
    public async Task Kept_text_that_cannot_be_read_is_said_and_nothing_is_changed()
    {
        JSInterop.Setup<string?>("sessionStorage.getItem", Key).SetResult("{");
        var keeper = new DraftKeeper(JSInterop.JSRuntime, Today);
        Assert.True((await keeper.ReadAsync()).IsEmpty);
        Assert.Contains("could not be read back", keeper.Problem);
    }

    [Fact]
    public async Task More_changes_than_a_tab_may_keep_are_not_kept_and_it_says_so()
    {
        var many = Enumerable.Range(0, 60).Aggregate(WeekEdits.None, (edits, i) => edits.With(new ValveClosed($"V{i}", Today, Today)));
        var keeper = new DraftKeeper(JSInterop.JSRuntime, Today);
        await keeper.KeepAsync(many);
        Assert.Contains("publish before you leave", keeper.Problem);
        JSInterop.VerifyNotInvoke("sessionStorage.setItem");
    }

    [Fact]
    public async Task A_browser_that_keeps_nothing_is_told()
    {
        JSInterop.SetupVoid("sessionStorage.setItem", _ => true).SetException(new Microsoft.JSInterop.JSException("denied"));
        var keeper = new DraftKeeper(JSInterop.JSRuntime, Today);
        await keeper.KeepAsync(Edits);
        Assert.Contains("keeps nothing", keeper.Problem);
    }
}
