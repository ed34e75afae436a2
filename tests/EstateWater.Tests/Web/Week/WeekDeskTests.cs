using Bunit;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Sets;
using EstateWater.Web.Features.Week;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;

namespace EstateWater.Tests.Web.Week;

public sealed class WeekDeskTests : BunitContext, IAsyncLifetime
{
    private PublishedEstate estate = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        estate = await PublishedEstate.CreateAsync(Cancellation);
        estate.AddTo(Services);
        Services.AddMudServices();
        JSInterop.Mode = JSRuntimeMode.Loose;
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
    }

    protected override async ValueTask DisposeAsyncCore()
    {
        await base.DisposeAsyncCore();
        await estate.DisposeAsync();
    }

    [Fact]
    public void It_listens_for_news_as_long_as_it_is_open()
    {
        var snapshots = Services.GetRequiredService<EstateSnapshots>();
        var desk = Desk();
        Assert.Equal(1, snapshots.SubscriberCount);
        desk.Instance.Dispose();
        Assert.Equal(0, snapshots.SubscriberCount);
    }

    [Fact]
    public async Task A_confirmation_shows_without_reloading()
    {
        var desk = Desk();
        Assert.Contains("0 of 2 sets confirmed", desk.Markup);
        await using (var db = estate.Open())
        {
            var entry = new ConfirmationEntry(Guid.NewGuid(), estate.SetIds[0], 5.5, 160, "Ben", null, Samples.AsOf.AddHours(25));
            await Confirmations.ConfirmAsync(db, entry, Samples.AsOf.AddHours(25), Cancellation);
        }

        Services.GetRequiredService<EstateSnapshots>().Invalidate();
        desk.WaitForAssertion(() =>
        {
            Assert.Contains("1 of 2 sets confirmed", desk.Markup);
            Assert.Contains("5.5 h, meter 160 m³ (Ben, Thu 23 Jan 07:00)", desk.Find(".tonight").TextContent);
        });
    }

    [Fact]
    public async Task A_set_that_could_not_run_is_the_first_thing_told_and_is_not_counted_as_run()
    {
        var desk = Desk();
        await using (var db = estate.Open())
        {
            var entry = new ConfirmationEntry(Guid.NewGuid(), estate.SetIds[0], 0, null, "Ben", null, Samples.AsOf.AddHours(22)) { NotRun = NotRunReason.PumpDown };
            await Confirmations.ConfirmAsync(db, entry, Samples.AsOf.AddHours(25), Cancellation);
        }

        Services.GetRequiredService<EstateSnapshots>().Invalidate();
        desk.WaitForAssertion(() =>
        {
            Assert.Equal("V01 could not run: pump down (Ben, Thu 23 Jan 04:00).", desk.Find("#monday-title + ul > li strong").TextContent);
            Assert.Contains("1 of 2 sets confirmed, 1 of them could not run", desk.Markup);
        });
    }

    [Fact]
    public async Task Publishing_keeps_the_sets_and_tells_every_open_page()
    {
        var desk = Desk();
        var plan = Samples.Plan(8, 4);
        await Services.GetRequiredService<WeekPlanner>().PublishAsync(plan, new Publication("Dana", "Check the filter."), Cancellation);
        await using var db = estate.Open();
        var last = await db.PublishedPlans.Include(p => p.Sets).OrderBy(p => p.Id).LastAsync(Cancellation);
        Assert.Equal(("Dana", "Check the filter."), (last.PublishedBy, last.Note));
        Assert.Equal([8, 4], last.Sets.OrderBy(s => s.Id).Select(s => s.Hours));
        Assert.Contains("\"hours\": 8", last.PlanJson);
        desk.WaitForAssertion(() => Assert.Contains("8 h", desk.Find(".tonight").TextContent));
    }

    [Fact]
    public void A_mistake_in_one_field_leaves_the_plan_and_the_other_fields()
    {
        var desk = Desk();
        desk.Find("#hours-B01").Change("lots");
        Assert.Equal("Hours must be between 0 and 240, like 6.5", desk.WaitForElement("#hours-B01-error").TextContent);
        Assert.Equal("4", desk.Find("#hours-B02").GetAttribute("value"));
    }

    private IRenderedComponent<WeekDesk> Desk()
    {
        var desk = Render<WeekDesk>();
        desk.WaitForElement(".tonight");
        return desk;
    }
}
