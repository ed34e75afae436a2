using System.Net;
using System.Net.Http.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using EstateWater.Web.Features.Accuracy;
using EstateWater.Web.State;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Host;

/// <summary>Past outlooks as they are served: no page waits for them, and all tell them once they are known.</summary>
public sealed class ServedAccuracyTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_first_look_begins_the_work_and_a_later_one_shows_it()
    {
        await using var host = await RunningHost.StartAsync(StoredEstate.Contents);
        var estate = await Page(host, "/");
        Assert.Empty(estate.QuerySelectorAll("main a[href='/accuracy']"));
        Assert.Equal(LookBackPhase.NotAsked, Past(host).Now.Phase);

        var first = await Page(host, "/accuracy");
        Assert.Equal("How good past outlooks were", first.QuerySelector("h1")!.TextContent);
        await KnownAsync(host);

        var page = await Page(host, "/accuracy");
        Assert.StartsWith("A week ahead the outlook was off by ", page.QuerySelector(".verdict")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["6", "6", "4", "4"], page.QuerySelectorAll("table")[0].QuerySelectorAll("tbody tr").Select(row => row.Children[1].TextContent));
        Assert.Equal(["/blocks/B1#accuracy", "/blocks/B2#accuracy"], page.QuerySelectorAll("[data-block-scores] a").Select(link => link.GetAttribute("href")!).Order());
        Assert.Empty(page.QuerySelectorAll("form"));

        var block = await Page(host, "/blocks/B1");
        Assert.Equal(2, block.QuerySelectorAll("[data-held] tbody tr").Length);

        // What is kept of the estate page is at most a minute old; a change of the data makes it anew at once.
        host.App.Services.GetRequiredService<EstateSnapshots>().Invalidate();
        var link = (await Page(host, "/")).QuerySelector("main a[href='/accuracy']")!;
        Assert.StartsWith("Outlook a week ahead: off by ", link.TextContent, StringComparison.Ordinal);
        Assert.Contains("not an order. Outlook a week ahead", link.ParentElement!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_owner_is_told_that_it_is_being_worked_out_and_then_how_good_the_outlook_was()
    {
        await using var host = await RunningHost.StartAsync(StoredEstate.Contents);
        Assert.Contains("It is being worked out now", (await Page(host, "/owner")).QuerySelector(".owner")!.TextContent, StringComparison.Ordinal);
        await KnownAsync(host);
        Assert.Contains("A week ahead the outlook was off by ", (await Page(host, "/owner")).QuerySelector(".owner")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_work_is_stopped_and_started_by_a_button()
    {
        await using var host = await RunningHost.StartAsync(StoredEstate.Contents);
        var past = Past(host);
        var snapshot = await host.App.Services.GetRequiredService<EstateSnapshots>().GetAsync(Cancellation);
        past.Start(snapshot);
        past.Stop();
        var page = await Page(host, "/accuracy");
        Assert.Contains("Stopped", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);

        var bare = await host.Http.PostAsync("/accuracy", new FormUrlEncodedContent([new("_handler", "start")]), Cancellation);
        Assert.Equal(HttpStatusCode.BadRequest, bare.StatusCode);
        Assert.Equal(LookBackPhase.Stopped, past.Now.Phase);

        var fields = page.QuerySelectorAll<IHtmlInputElement>("form input").Select(input => KeyValuePair.Create(input.Name!, input.Value));
        var pressed = await host.Http.PostAsync("/accuracy", new FormUrlEncodedContent(fields), Cancellation);
        Assert.Equal(HttpStatusCode.OK, pressed.StatusCode);
        await KnownAsync(host);
    }

    [Fact]
    public async Task Without_a_plan_nothing_is_begun()
    {
        await using var host = await RunningHost.StartAsync(StoredEstate.Contents with { Weather = [], Forecasts = [] });
        var page = await Page(host, "/accuracy");
        Assert.Contains("There is no plan yet", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(LookBackPhase.NotAsked, Past(host).Now.Phase);
    }

    private static PastOutlooks Past(RunningHost host) => host.App.Services.GetRequiredService<PastOutlooks>();

    private static async Task<IDocument> Page(RunningHost host, string address) =>
        new HtmlParser().ParseDocument(await host.Http.GetStringAsync(address, Cancellation));

    private static async Task KnownAsync(RunningHost host)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Cancellation);
        patience.CancelAfter(TimeSpan.FromMinutes(3));
        while ((await host.Http.GetFromJsonAsync<LookBackProgress>("/accuracy/progress", patience.Token))!.Working)
        {
            await Task.Delay(20, patience.Token);
        }

        Assert.Equal(LookBackPhase.Known, Past(host).Now.Phase);
    }
}
