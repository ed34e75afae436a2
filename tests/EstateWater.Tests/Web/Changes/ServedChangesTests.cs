using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Data.Store.Taken;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Parts.Preferences;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Changes;

public sealed class ServedChangesTests : IAsyncLifetime
{
    private RunningHost host = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        host = await RunningHost.StartAsync(StoredEstate.Contents);
        await using var db = await OpenAsync();
        await PublishAsync(db, "Ana", 14);
        await PublishAsync(db, "Bea", 16);
    }

    public ValueTask DisposeAsync() => host.DisposeAsync();

    [Fact]
    public async Task The_newest_change_is_first_and_only_the_standing_publication_can_be_taken_back()
    {
        var rows = (await PageAsync("/changes")).QuerySelectorAll("table.changes tbody tr");
        Assert.Equal(["Bea", "Ana", "Mara"], rows.Select(r => r.Children[1].TextContent));
        Assert.Equal([1, 0, 0], rows.Select(r => r.QuerySelectorAll("form").Length));
        Assert.Equal("Another plan stands", rows[1].Children[5].TextContent.Trim());
        Assert.Empty(rows[2].Children[5].TextContent.Trim());
    }

    [Fact]
    public async Task The_note_of_a_publication_stands_in_the_record_and_why_it_can_no_longer_be_taken_back()
    {
        await using var db = await OpenAsync();
        var set = (await PublishAsync(db, "Cleo", 18, "Filters first.")).Sets.Single();
        Assert.Equal("Published 1 set, 4 h (Filters first.)", (await PageAsync("/changes")).QuerySelector("table.changes tbody tr")!.Children[3].TextContent);
        await Confirmations.ConfirmAsync(db, new ConfirmationEntry(Guid.NewGuid(), set.Id, 0, null, "Ben", null, SmallEstate.AsOf) { NotRun = NotRunReason.PumpDown }, SmallEstate.AsOf, Cancellation);
        var publication = (await PageAsync("/changes")).QuerySelectorAll("table.changes tbody tr")[1];
        Assert.Equal("A set of it was confirmed: publish anew", publication.Children[5].TextContent.Trim());
        Assert.Null(publication.QuerySelector("form"));
    }

    [Fact]
    public async Task A_publication_whose_first_set_has_begun_says_so()
    {
        await using var db = await OpenAsync();
        await PublishAsync(db, "Cleo", -1);
        Assert.Equal("Its first set has begun: publish anew", (await PageAsync("/changes")).QuerySelector("table.changes tbody tr")!.Children[5].TextContent.Trim());
    }

    [Theory]
    [InlineData("person=Ana", "Ana")]
    [InlineData("kind=publication", "Bea Ana")]
    [InlineData("kind=correction", "")]
    [InlineData("kind=nonsense&below=x", "Bea Ana Mara")]
    [InlineData("below=3", "Ana Mara")]
    public async Task The_address_filters(string query, string people)
    {
        var rows = (await PageAsync("/changes?" + query)).QuerySelectorAll("table.changes tbody tr");
        Assert.Equal(people, string.Join(' ', rows.Select(r => r.Children[1].TextContent)));
    }

    [Fact]
    public async Task A_publication_taken_back_leaves_the_former_plan_and_a_line_in_the_record()
    {
        var form = (await PageAsync("/changes")).QuerySelector("table.changes form")!;
        var fields = form.QuerySelectorAll("input[type=hidden]").ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value")!);
        Assert.Null(form.QuerySelector("input[name=by]"));
        fields["by"] = "Cleo"; // Whoever signed in takes it back, whatever else is sent.
        using var body = new FormUrlEncodedContent(fields);
        Assert.Equal(HttpStatusCode.OK, (await host.Http.PostAsync(form.GetAttribute("action"), body, Cancellation)).StatusCode);

        var first = (await PageAsync("/changes")).QuerySelector("table.changes tbody tr")!;
        Assert.Equal("Mara", first.Children[1].TextContent);
        Assert.Contains("by Ana stands again", first.Children[3].TextContent, StringComparison.Ordinal);
        Assert.Contains("Published by Ana", (await PageAsync("/sets")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_the_forms_token_nothing_is_taken_back()
    {
        using var body = new FormUrlEncodedContent(new Dictionary<string, string> { ["change"] = "3", ["by"] = "Cleo" });
        Assert.Equal(HttpStatusCode.BadRequest, (await host.Http.PostAsync("/changes/undo", body, Cancellation)).StatusCode);
        await using var db = await OpenAsync();
        Assert.Equal("Bea", (await PublishedPlans.Standing(db).FirstAsync(Cancellation)).PublishedBy);
    }

    // 10 bar = 1 MPa, 2.54 cm = 1 in, 1 gal = 231 in³; the marks and the order of days are those of the choice.
    [Theory]
    [InlineData("bar.mm.m3.ha.c.en", "V1 of Wed 22 Jan 22:00: 4 h, 1\u202F000.5 m³|B1: canopy: shoots 95 cm, shade 35 %, Wed 22 Jan 05:00|B1: 1 leaf, leaf, mean 14.0 bar, from Wed 22 Jan 05:00 (B1: 2 leaves, leaf, mean 12.5 bar, from Wed 22 Jan 05:00)|Withdrew B1: 1 leaf, leaf, mean 14.0 bar, from Wed 22 Jan 05:00")]
    [InlineData("mpa.in.gal.ac.f.en-US", "V1 of Wed Jan 22 10:00 PM: 4 h, 264,304.1 gal|B1: canopy: shoots 37.4 in, shade 35 %, Wed Jan 22 5:00 AM|B1: 1 leaf, leaf, mean 1.40 MPa, from Wed Jan 22 5:00 AM (B1: 2 leaves, leaf, mean 1.25 MPa, from Wed Jan 22 5:00 AM)|Withdrew B1: 1 leaf, leaf, mean 1.40 MPa, from Wed Jan 22 5:00 AM")]
    public async Task Entries_are_told_in_the_readers_units_and_kept_in_the_estates(string units, string told)
    {
        var (now, first, second) = (SmallEstate.AsOf, Guid.NewGuid(), Guid.NewGuid());
        await using var db = await OpenAsync();
        var set = await db.PublishedSets.OrderBy(s => s.Id).LastAsync(Cancellation);
        await Confirmations.ConfirmAsync(db, new ConfirmationEntry(Guid.NewGuid(), set.Id, 4, 1000.5, "Ben", null, now), set.End, Cancellation);
        await TakenEntries.TakeAsync(db, new TakenMessage(Guid.NewGuid(), Content(TakenKind.Canopy) with { Canopy = new CanopyFacts(95, 0.35, null, null) }, null, "Tess", now), now, Cancellation);
        await TakenEntries.TakeAsync(db, new TakenMessage(first, Leaves(12, 13), null, "Tess", now), now, Cancellation);
        await TakenEntries.TakeAsync(db, new TakenMessage(second, Leaves(14), first, "Tess", now), now, Cancellation);
        await TakenEntries.TakeAsync(db, new TakenMessage(Guid.NewGuid(), null, second, "Tess", now), now, Cancellation);
        Assert.Equal("Withdrew B1: 1 leaf, leaf, mean 14.0 bar, from Wed 22 Jan 05:00", (await db.Changes.OrderBy(c => c.Id).LastAsync(Cancellation)).What);

        host.Http.DefaultRequestHeaders.Add("Cookie", $"{ReaderPreferences.Cookie}={Uri.EscapeDataString($"system:{units}")}");
        var rows = (await PageAsync("/changes")).QuerySelectorAll("table.changes tbody tr").Select(r => (What: r.Children[3].TextContent, Before: r.Children[4].TextContent)).ToList();
        Assert.Equal(told, string.Join('|', rows[4].What, rows[3].What, $"{rows[1].What} ({rows[1].Before})", rows[0].What));
        Assert.Equal((rows[1].What, "–", "Published 1 set, 4 h"), (rows[0].Before, rows[2].Before, rows[5].What));
    }

    [Fact]
    public async Task Blocks_stand_side_by_side()
    {
        var page = await PageAsync("/compare?blocks=B2,B1,B9");
        Assert.Equal(["B2 Block 2", "B1 Block 1"], page.QuerySelectorAll(".compared h2").Select(h => h.TextContent));
        Assert.Equal("The estate has no block B9.", page.QuerySelector("[role=alert]")!.TextContent);
        Assert.Equal(2, page.QuerySelectorAll(".season-readings").Length);
        Assert.All(page.QuerySelectorAll(".outlook-axis .ends").Select(ends => ends.TextContent), ends => Assert.Matches("^\\d+\\.\\d bar\\d+\\.\\d bar$", ends));
        Assert.Equal(2, page.QuerySelectorAll(".outlook-axis .ends").Length);
        Assert.Equal(4, page.QuerySelector(".compared")!.QuerySelectorAll(".season-readings circle").Length);
    }

    [Fact]
    public async Task The_list_of_blocks_leads_to_the_comparison()
    {
        var page = await PageAsync("/");
        Assert.Equal(("/compare", "compare"), (page.QuerySelector("form#compare")!.GetAttribute("action"), page.QuerySelector("[data-list] input[name=blocks][value=B1]")!.GetAttribute("form")));
    }

    private static TakenContent Content(TakenKind kind) => new() { Kind = kind, BlockCode = "B1", TakenAt = SmallEstate.AsOf.AddHours(-1) };

    private static TakenContent Leaves(params double[] bar) => Content(TakenKind.Chamber) with
    {
        Leaves = new LeafSet(WaterPotentialMeasure.Leaf, [.. bar.Select(b => new TakenLeaf(SmallEstate.AsOf.AddHours(-1), b))]),
    };

    private static Task<PublishedPlan> PublishAsync(EstateDb db, string by, int startsAhead, string? note = null)
    {
        var start = SmallEstate.AsOf.AddHours(startsAhead);
        var set = new PublishedSet { ValveCode = "V1", SourceCode = "dam", Start = start, End = start.AddHours(4), Hours = 4, FlowM3PerH = 20 };
        return PublishedPlans.PublishAsync(db, SmallEstate.AsOf, "{}", [set], by, note, SmallEstate.AsOf, Cancellation);
    }

    private Task<EstateDb> OpenAsync() => host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);

    private async Task<IDocument> PageAsync(string address) => new HtmlParser().ParseDocument(await host.Http.GetStringAsync(address, Cancellation));
}
