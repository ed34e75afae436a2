using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Rounds;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Features.Taking;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Rounds;

public sealed class ServedRoundTests : IAsyncLifetime
{
    private RunningHost host = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => host = await RunningHost.StartAsync(StoredEstate.Contents);

    public ValueTask DisposeAsync() => host.DisposeAsync();

    [Fact]
    public async Task The_round_is_told_in_a_sentence_in_order_and_on_the_map_and_the_phone_shows_the_same()
    {
        var page = await PageAsync(RoundEndpoint.Href);
        Assert.StartsWith("Read two of two blocks today, ", page.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, page.QuerySelectorAll(".walk circle").Length);
        Assert.Contains("compressed gas", page.QuerySelector(".caution")!.TextContent, StringComparison.Ordinal);
        var order = page.QuerySelectorAll(".stops h3 a").Select(a => a.TextContent).ToList();
        Assert.Equal(order, (await PageAsync("/readings")).QuerySelectorAll(".stops h3").Select(h => h.TextContent));
    }

    [Fact]
    public async Task The_phone_tells_the_reasons_in_its_language_and_those_kept_without_facts_as_they_are()
    {
        var english = (await PageAsync(RoundEndpoint.Href)).QuerySelectorAll(".stops li > p").Select(p => p.TextContent).ToList();
        var phone = (await PageAsync("/readings")).QuerySelectorAll(".why").Select(p => p.TextContent).ToList();
        Assert.Equal(2, phone.Count);
        Assert.All(phone.Zip(english), pair => Assert.EndsWith(pair.First, pair.Second, StringComparison.Ordinal));
        Assert.All((await PageAsync("/readings?lang=es")).QuerySelectorAll(".why"), p => Assert.Matches("lectura|Nunca se ha leído", p.TextContent));

        // A round kept before its facts were.
        await using (var db = await host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation))
        {
            var kept = await db.PlannedRounds.SingleAsync(Cancellation);
            var document = JsonNode.Parse(kept.Document)!;
            Assert.All(document["Stops"]!.AsArray(), stop => Assert.True(stop!.AsObject().Remove("Question")));
            kept.Document = document.ToJsonString();
            await db.SaveChangesAsync(Cancellation);
        }

        // Its numbers are still written as the reader writes them.
        Assert.Equal(phone, (await PageAsync("/readings?lang=es")).QuerySelectorAll(".why").Select(p => Regex.Replace(p.TextContent, @"(\d),(\d)", "$1.$2")));
    }

    [Fact]
    public async Task A_block_taken_out_is_off_the_phones_round_until_it_is_put_in_again()
    {
        await SubmitAsync(await PageAsync(RoundEndpoint.Href), "Take B1 out");
        Assert.DoesNotContain("B1", Stops(await PageAsync("/readings")));
        var page = await PageAsync(RoundEndpoint.Href);
        Assert.Contains("taken out by hand", page.QuerySelector(".rest")!.TextContent, StringComparison.Ordinal);
        await SubmitAsync(page, "Put B1 in");
        Assert.Contains("B1", Stops(await PageAsync("/readings")));
    }

    [Fact]
    public async Task The_round_of_the_day_stays_while_readings_come_in()
    {
        var before = Stops(await PageAsync("/readings"));
        host.Http.DefaultRequestHeaders.Add(OwnPages.Header, "1");
        var sent = await host.Http.PostAsJsonAsync(
            ReadingEndpoint.Path,
            new ReadingMessage
            {
                EntryId = Guid.NewGuid(),
                Kind = "chamber",
                Block = "B1",
                Measure = "leaf",
                TakenBy = "Mara",
                EnteredAt = SmallEstate.AsOf,
                Leaves = [new() { TakenAt = SmallEstate.AsOf.AddMinutes(-20), TensionBar = 12 }],
            },
            Cancellation);
        Assert.Equal(HttpStatusCode.Created, sent.StatusCode);
        var page = await PageAsync("/readings");
        Assert.Equal(before, Stops(page));
        Assert.Equal("B1: 1 leaf, leaf, 12.0 bar (Mara, 05:40)", page.QuerySelector("[data-state-of=B1]")!.TextContent);
        await using var db = await host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);
        Assert.Equal(1, await db.PlannedRounds.CountAsync(Cancellation));
    }

    [Fact]
    public async Task Another_precision_asks_for_other_leaves_and_a_mistake_keeps_what_was_typed()
    {
        var before = Leaves(await PageAsync(RoundEndpoint.Href));
        var page = await PageAsync(RoundEndpoint.Href);
        await SubmitAsync(page, "Plan the round so", ("precision", "0,6"));
        Assert.True(Leaves(await PageAsync(RoundEndpoint.Href)) > before);

        var wrong = await SubmitAsync(page, "Plan the round so", ("precision", "none"), ("walk", "99"));
        Assert.Equal("none", wrong.QuerySelector("input[name=precision]")!.GetAttribute("value"));
        Assert.Equal(["Speed between blocks is 1 to 40 km/h, like 3.6.", "The precision wanted is 0.2 to 5 bar, like 1."], wrong.QuerySelectorAll("[role=alert] li").Select(li => li.TextContent));
    }

    [Fact]
    public async Task In_other_units_the_round_is_told_and_typed_in_them()
    {
        host.Http.DefaultRequestHeaders.Add("Cookie", $"{ReaderPreferences.Cookie}={Uri.EscapeDataString("light:mpa.in.gal.ac.f.es")}");
        var page = await PageAsync(RoundEndpoint.Href);
        // 3.6 km/h are 2.237 miles of 1609.344 m an hour; 1 bar is 0.1 MPa.
        Assert.Equal("2,237", page.QuerySelector("input[name=walk]")!.GetAttribute("value"));
        Assert.Equal("0,1", page.QuerySelector("input[name=precision]")!.GetAttribute("value"));
        Assert.DoesNotMatch(@"\d\s?(bar|m|km/h)\b", page.QuerySelector("main")!.TextContent);
        var before = Leaves(page);
        page = await SubmitAsync(page, "Plan the round so", ("precision", "0,06"));
        Assert.Equal("0,06", page.QuerySelector("input[name=precision]")!.GetAttribute("value"));
        Assert.Equal("2,237", page.QuerySelector("input[name=walk]")!.GetAttribute("value"));
        Assert.True(Leaves(page) > before);
        // 1 and 40 km/h are 0.62 and 24.85 mph.
        var wrong = await SubmitAsync(page, "Plan the round so", ("walk", "99"));
        Assert.Equal("Speed between blocks is 0,62 to 24,85 mph, like 2,24.", wrong.QuerySelector("[role=alert] li")!.TextContent);
    }

    [Fact]
    public async Task In_Spanish_the_round_its_walk_its_settings_and_its_rules_are_told_in_Spanish()
    {
        var page = await PageAsync(RoundEndpoint.Href + "?lang=es");
        Assert.StartsWith("Leer 2 de 2 bloques hoy, ", page.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("es", page.QuerySelector("h1")!.ParentElement!.GetAttribute("lang"));
        Assert.All(page.QuerySelectorAll(".map a"), block => Assert.Matches("estrés|sin lectura reciente", block.GetAttribute("aria-label")));

        // The answers come in it too, since the page remembers it for the visitor.
        host.Http.DefaultRequestHeaders.Add("Cookie", $"{FieldLanguages.Cookie}=es");
        page = await SubmitAsync(page, "Quitar B1");
        Assert.Matches("B1.*, quitado a mano: .*(Nunca se ha leído|Se leyó|lectura)", page.QuerySelector(".rest")!.TextContent.ReplaceLineEndings(" "));
        var wrong = await SubmitAsync(page, "Planear así la ronda", ("walk", "99"), ("leaf", "2 knots"), ("precision", "0.06 MPa"));
        Assert.Equal(
            ["La velocidad entre bloques va de 1 a 40 km/h, como 3,6.", "«knots» no es una unidad para esto. Se acepta: min, s. Una hoja tarda de 0,25 a 15 min, como 1,5."],
            wrong.QuerySelectorAll("[role=alert] li").Select(li => li.TextContent));
        var main = page.QuerySelector("main")!.TextContent;
        Assert.DoesNotMatch(@"\b(the|leaves|reading|walk|round|from|minutes)\b", main.ToLowerInvariant());
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        using var body = new FormUrlEncodedContent([KeyValuePair.Create("date", "2025-01-22"), KeyValuePair.Create("drop", "B1")]);
        host.Http.DefaultRequestHeaders.Add("Cookie", $"{FieldLanguages.Cookie}=es");
        var answer = await host.Http.PostAsync(RoundEndpoint.Path, body, Cancellation);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("Abra la ronda otra vez", await answer.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_plan_blocks_can_still_be_read()
    {
        await using var bare = await RunningHost.StartAsync(StoredEstate.Contents with { Weather = [], Forecasts = [] });
        var page = Parse(await bare.Http.GetStringAsync("/readings", Cancellation));
        Assert.Contains("There is no round for today", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["", "B1", "B2"], page.QuerySelectorAll("#other option").Select(o => o.GetAttribute("value")));
        Assert.Contains("There is no plan yet", await bare.Http.GetStringAsync(RoundEndpoint.Href, Cancellation), StringComparison.Ordinal);
    }

    private static int Leaves(IDocument page) => page.QuerySelectorAll(".stops li p").Sum(p => int.Parse(p.TextContent.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture));

    private static List<string> Stops(IDocument page) => [.. page.QuerySelectorAll("[data-stop]").Select(s => s.GetAttribute("data-stop")!)];

    private async Task<IDocument> SubmitAsync(IDocument page, string words, params (string Name, string Value)[] typed)
    {
        var form = page.QuerySelectorAll("form").Single(f => f.QuerySelector("button")!.TextContent == words);
        var fields = form.QuerySelectorAll("input").ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value") ?? "");
        foreach (var (name, value) in typed)
        {
            fields[name] = value;
        }

        using var body = new FormUrlEncodedContent(fields);
        var answer = await host.Http.PostAsync(form.GetAttribute("action"), body, Cancellation);
        answer.EnsureSuccessStatusCode();
        return Parse(await answer.Content.ReadAsStringAsync(Cancellation));
    }

    private async Task<IDocument> PageAsync(string address) => Parse(await host.Http.GetStringAsync(address, Cancellation));

    private static IDocument Parse(string html) => new HtmlParser().ParseDocument(html);
}
