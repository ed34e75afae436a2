using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Host;
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

    [Fact]
    public async Task Blocks_stand_side_by_side()
    {
        var page = await PageAsync("/compare?blocks=B2,B1,B9");
        Assert.Equal(["B2 Block 2", "B1 Block 1"], page.QuerySelectorAll(".compared h2").Select(h => h.TextContent));
        Assert.Equal("The estate has no block B9.", page.QuerySelector("[role=alert]")!.TextContent);
        Assert.Equal(2, page.QuerySelectorAll(".season-readings").Length);
        Assert.Equal(4, page.QuerySelector(".compared")!.QuerySelectorAll(".season-readings circle").Length);
    }

    [Fact]
    public async Task The_list_of_blocks_leads_to_the_comparison()
    {
        var page = await PageAsync("/");
        Assert.Equal(("/compare", "compare"), (page.QuerySelector("form#compare")!.GetAttribute("action"), page.QuerySelector("[data-list] input[name=blocks][value=B1]")!.GetAttribute("form")));
    }

    private static Task<PublishedPlan> PublishAsync(EstateDb db, string by, int startsAhead)
    {
        var start = SmallEstate.AsOf.AddHours(startsAhead);
        var set = new PublishedSet { ValveCode = "V1", SourceCode = "dam", Start = start, End = start.AddHours(4), Hours = 4, FlowM3PerH = 20 };
        return PublishedPlans.PublishAsync(db, SmallEstate.AsOf, "{}", [set], by, null, SmallEstate.AsOf, Cancellation);
    }

    private Task<EstateDb> OpenAsync() => host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);

    private async Task<IDocument> PageAsync(string address) => new HtmlParser().ParseDocument(await host.Http.GetStringAsync(address, Cancellation));
}
