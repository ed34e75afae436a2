using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using EstateWater.Web.State;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Host;

public sealed class ServedEstate : IAsyncLifetime
{
    internal RunningHost Host { get; private set; } = default!;

    public async ValueTask InitializeAsync() => Host = await RunningHost.StartAsync(StoredEstate.Contents);

    public ValueTask DisposeAsync() => Host.DisposeAsync();
}

public sealed class ServedPagesTests(ServedEstate served) : IClassFixture<ServedEstate>
{
    private HttpClient Http => served.Host.Http;

    [Fact]
    public async Task The_estate_page_answers_from_the_stored_estate()
    {
        var page = await Page("/");
        Assert.Contains("two blocks", page.QuerySelector("h1")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Equal("Demo clock: fixed at Wed 22 Jan 2025, 06:00", page.QuerySelector(".clock-note")!.TextContent);
        Assert.Equal(2, page.QuerySelectorAll("svg[data-map] a").Length);
        Assert.Equal(2, page.QuerySelectorAll("[data-list] tbody tr").Length);
        Assert.Contains("weather measured to Tue 21 Jan; forecast of Wed 22 Jan 2025, 05:00", page.QuerySelector(".brief")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "Clock", "Demo clock: fixed at Wed 22 Jan 2025, 06:00")]
    [InlineData("es", "Reloj", "Reloj de la demostración: parado el mié 22 ene 2025 a las 06:00")]
    public async Task A_page_used_outdoors_says_in_its_language_that_the_clock_stands_still(string language, string name, string words)
    {
        foreach (var path in new[] { "/sets", "/readings" })
        {
            var clock = (await Page($"{path}?lang={language}")).QuerySelector(".field-clock")!;
            Assert.Equal((name, words), (clock.GetAttribute("aria-label"), clock.TextContent));
        }
    }

    [Fact]
    public async Task The_block_page_tells_the_block_and_holds_the_charts_place()
    {
        var page = await Page("/blocks/B1?range=2w");
        Assert.StartsWith("B1 Block 1: stress ", page.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Two weeks", page.QuerySelector(".ranges [aria-current]")!.TextContent);
        Assert.NotNull(page.QuerySelector(".chart-box"));
        Assert.Contains("compressed gas", page.QuerySelector("aside[aria-label=Caution]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("/blocks/B1/sets/2025-01-20", page.QuerySelector(".facts a")!.GetAttribute("href"));
        // The calibration gives −0.02 + 0.6 · 6000 ∕ 12000 = 0.28 m³∕m³.
        Assert.Equal("28.0", page.QuerySelector("#soil-title")!.ParentElement!.QuerySelector("td")!.TextContent);
    }

    [Fact]
    public async Task The_soil_page_tells_each_tube_and_the_caution_of_its_probe()
    {
        var page = await Page("/blocks/B1/soil");
        Assert.Equal("B1: water in the soil", page.QuerySelector("h1")!.TextContent);
        // 0.28 m³∕m³ at 40 cm, held to the surface: 112 mm.
        Assert.Contains("112\u00A0mm of water down to 0.40\u00A0m on Mon 20 Jan (2 days ago)", page.QuerySelector("h1 + p")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("licensed operators", page.QuerySelector(".caution")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("/blocks/B1/soil", (await Page("/blocks/B1")).QuerySelector("#soil-title ~ p a")!.GetAttribute("href"));
    }

    [Fact]
    public async Task A_block_without_a_tube_says_what_to_enter() =>
        Assert.Contains("No tube of this block", (await Page("/blocks/B2/soil")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);

    [Fact]
    public async Task The_report_says_the_estates_sentence_and_tells_each_block()
    {
        var page = await Page("/report");
        Assert.Equal((await Page("/")).QuerySelector("h1")!.TextContent, page.QuerySelector("h1")!.TextContent);
        Assert.Equal(["block-B1", "block-B2"], page.QuerySelectorAll("article").Select(block => block.Id).Order());
        Assert.Equal("/report#block-B1", page.QuerySelector("svg[data-map] a[data-block=B1]")!.GetAttribute("href"));
        Assert.Equal(3, page.QuerySelectorAll(".signature dt").Length);
        Assert.Contains(page.QuerySelectorAll("link[rel=stylesheet]"), link => link.GetAttribute("href")!.Contains("a4", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_report_of_some_blocks_on_another_paper_stands_in_its_address()
    {
        var page = await Page("/report?scope=ticked&blocks=B2&blocks=X9&paper=letter");
        Assert.Equal("block-B2", Assert.Single(page.QuerySelectorAll("article")).Id);
        Assert.Equal("The estate has no block X9.", page.QuerySelector("[role=alert]")!.TextContent);
        Assert.Equal(["B2"], page.QuerySelectorAll("input[name=blocks][checked]").Select(box => box.GetAttribute("value")));
        Assert.Equal("/report?scope=ticked&blocks=B2&blocks=X9&paper=letter#block-B2", page.QuerySelector(".contents a")!.GetAttribute("href"));
        Assert.Equal("/blocks/B1", page.QuerySelector("svg[data-map] a[data-block=B1]")!.GetAttribute("href"));
        Assert.Contains(page.QuerySelectorAll("link[rel=stylesheet]"), link => link.GetAttribute("href")!.Contains("letter", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_owner_reads_whether_the_water_lasts_before_how_much_is_used() =>
        Assert.Matches("^(dam runs short before harvest: |The water left is expected to last).*is used", (await Page("/owner")).QuerySelector(".lead")!.TextContent);

    [Fact]
    public async Task The_owner_is_led_to_the_report() => Assert.NotNull((await Page("/owner")).QuerySelector("main a[href='/report']"));

    [Fact]
    public async Task A_mangled_range_shows_the_season() =>
        Assert.Equal("Season", (await Page("/blocks/B1?range=%00x")).QuerySelector(".ranges [aria-current]")!.TextContent);

    [Fact]
    public async Task A_reading_set_lists_each_leaf_and_its_statistics()
    {
        var page = await Page("/blocks/B1/sets/2025-01-20");
        Assert.Equal(["11.50", "11.75", "12.00", "12.25", "12.50"], page.QuerySelectorAll("tbody tr").Select(row => row.Children[3].TextContent));
        // Five values 0.25 apart: s = 0.25 √2.5, standard error s ∕ √5 = 0.177, t(4) = 2.776 gives ± 0.5.
        Assert.Contains("Standard error 0.18 bar", page.QuerySelector("section p")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("12.0 ± 0.5 bar", page.QuerySelector("section p")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/blocks/none")]
    [InlineData("/blocks/none/soil")]
    [InlineData("/blocks/B1/sets/2025-01-19")]
    [InlineData("/blocks/B1/sets/yesterday")]
    [InlineData("/no/such/page")]
    public async Task What_is_not_there_answers_404_with_a_page(string address)
    {
        var answer = await Http.GetAsync(address, Cancellation);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is no such page", await answer.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/blocks/B1")]
    [InlineData("/blocks/B1/soil")]
    [InlineData("/report")]
    [InlineData("/methods")]
    public async Task Pages_keep_to_themselves(string address)
    {
        var answer = await Http.GetAsync(address, Cancellation);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        var page = new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(Cancellation));
        Assert.All(page.Scripts, script => Assert.NotNull(script.GetAttribute("src")));
        Assert.DoesNotContain(page.All, element => element.Attributes.Any(attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Every_page_has_one_main_one_heading_and_a_way_past_the_header()
    {
        foreach (var address in new[] { "/", "/blocks/B1", "/blocks/B1/soil", "/blocks/B1/sets/2025-01-20", "/accuracy", "/methods", "/report" })
        {
            var page = await Page(address);
            Assert.Single(page.QuerySelectorAll("main"));
            Assert.Single(page.QuerySelectorAll("h1"));
            Assert.EndsWith("#main", page.QuerySelector("a.skip")!.GetAttribute("href"), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Pages_looked_at_now_and_then_stand_behind_one_word_that_names_the_one_shown()
    {
        var more = (await Page("/")).QuerySelector("header nav details:not([open])")!;
        Assert.Equal(["/changes", "/accuracy", "/methods", "/people", "/preferences"], more.QuerySelectorAll("a").Select(a => a.GetAttribute("href")));
        Assert.Equal("More", more.QuerySelector("summary:not(.active)")!.TextContent);
        Assert.Equal("More: Methods", (await Page("/methods")).QuerySelector("header nav summary.active")!.TextContent);
    }

    [Fact]
    public async Task The_estate_page_is_kept_compressed_until_the_data_change()
    {
        await Compressed();
        var kept = await Compressed();
        Assert.Equal("br", Assert.Single(kept.Content.Headers.ContentEncoding));
        Assert.NotNull(kept.Headers.Age);
        var snapshots = served.Host.App.Services.GetRequiredService<EstateSnapshots>();
        snapshots.Invalidate();
        Assert.Null((await Compressed()).Headers.Age);
    }

    [Fact]
    public async Task Open_pages_hear_of_a_change_and_leave_nothing_behind()
    {
        var snapshots = served.Host.App.Services.GetRequiredService<EstateSnapshots>();
        using (var lines = new StreamReader(await Http.GetStreamAsync("/news", Cancellation)))
        {
            Assert.Equal("event: news", await lines.ReadLineAsync(Cancellation));
            Assert.StartsWith("data: {\"version\":", await lines.ReadLineAsync(Cancellation), StringComparison.Ordinal);
            await lines.ReadLineAsync(Cancellation);
            snapshots.Invalidate("V1 was confirmed.");
            await lines.ReadLineAsync(Cancellation);
            Assert.Contains("\"what\":\"V1 was confirmed.\"", await lines.ReadLineAsync(Cancellation), StringComparison.Ordinal);
        }

        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Cancellation);
        patience.CancelAfter(TimeSpan.FromSeconds(10));
        while (snapshots.SubscriberCount > 0)
        {
            await Task.Delay(20, patience.Token);
        }
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private async Task<IDocument> Page(string address)
    {
        var answer = await Http.GetAsync(address, Cancellation);
        answer.EnsureSuccessStatusCode();
        return new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(Cancellation));
    }

    private async Task<HttpResponseMessage> Compressed()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.AcceptEncoding.Add(new StringWithQualityHeaderValue("br"));
        return await Http.SendAsync(request, Cancellation);
    }
}

public sealed class EmptyDatabaseTests
{
    [Fact]
    public async Task An_empty_database_says_what_to_do_first_on_the_estate_page()
    {
        await using var host = await RunningHost.StartAsync(null);
        Assert.Contains("No estate yet", await host.Http.GetStringAsync("/", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Contains("No estate yet", await host.Http.GetStringAsync("/report", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await host.Http.GetAsync("/blocks/B1", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task An_estate_without_weather_says_what_a_plan_lacks()
    {
        await using var host = await RunningHost.StartAsync(StoredEstate.Contents with { Weather = [], Forecasts = [] });
        foreach (var address in new[] { "/", "/blocks/B1", "/blocks/B1/soil", "/report" })
        {
            var page = await host.Http.GetStringAsync(address, TestContext.Current.CancellationToken);
            Assert.Contains("There is no plan yet", page, StringComparison.Ordinal);
            Assert.Contains("station home has no weather", page, StringComparison.Ordinal);
        }
    }
}
