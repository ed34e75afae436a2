using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using EstateWater.Data.Store;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Host;

public sealed class ServedPreferencesTests(ServedEstate served) : IClassFixture<ServedEstate>, IDisposable
{
    private readonly List<Visitor> visitors = [];

    public void Dispose() => visitors.ForEach(visitor => visitor.Dispose());

    [Fact]
    public async Task Pages_that_are_kept_for_all_are_kept_apart_by_choice()
    {
        var visitor = await SignedInAsync();
        Assert.Contains("Tension in bar", await TextAsync(visitor, "/"), StringComparison.Ordinal);
        await ChooseAsync(visitor, ("pressure", "mpa"), ("volume", "gal"), ("look", "dark"));
        var page = await TextAsync(visitor, "/");
        Assert.Contains("Tension in MPa", page, StringComparison.Ordinal);
        Assert.Contains(" gal ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("m³", page, StringComparison.Ordinal);
        var other = await SignedInAsync();
        Assert.Contains("Tension in bar", await TextAsync(other, "/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_preset_takes_every_unit_and_the_form_shows_them()
    {
        var visitor = await SignedInAsync();
        await ChooseAsync(visitor, ("preset", "us"));
        var page = await PageAsync(visitor, "/preferences");
        Assert.Equal(["bar", "in", "gal", "ac", "f", "en-US"], page.QuerySelectorAll("option[selected]").Select(option => option.GetAttribute("value")));
    }

    [Fact]
    public async Task Choosing_spanish_lets_numbers_have_their_comma_also_on_the_round()
    {
        var visitor = await SignedInAsync();
        await ChooseAsync(visitor, ("numbers", ""), ("language", "es"));
        var round = await TextAsync(visitor, "/readings/round");
        Assert.Contains("Leer ", round, StringComparison.Ordinal);
        Assert.Matches(@"\d,\d bar", round);
        Assert.DoesNotMatch(@"\d\.\d bar", round);
        Assert.Contains("Tension in bar", await TextAsync(visitor, "/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_person_chose_comes_along_to_another_browser()
    {
        await ChooseAsync(await SignedInAsync(), ("pressure", "mpa"), ("look", "dark"), ("language", "es"));
        var elsewhere = await SignedInAsync(keeps: true);
        Assert.Contains("Tension in MPa", await TextAsync(elsewhere, "/"), StringComparison.Ordinal);
        var page = await PageAsync(elsewhere, "/preferences");
        Assert.Equal("Preferencias", page.QuerySelector("h1")!.TextContent);
        Assert.Equal("es", page.QuerySelector("h1")!.ParentElement!.GetAttribute("lang"));
        Assert.NotNull(page.QuerySelector("input[name=look][value=dark][checked]"));
    }

    [Fact]
    public async Task The_appearance_reaches_the_style_sheet()
    {
        var visitor = await SignedInAsync();
        Assert.Equal("screen and (prefers-color-scheme: dark)", DarkMedia(await PageAsync(visitor, "/methods")));
        await ChooseAsync(visitor, ("look", "light"));
        Assert.Equal("not all", DarkMedia(await PageAsync(visitor, "/methods")));
    }

    [Fact]
    public async Task A_form_of_elsewhere_changes_nothing()
    {
        var visitor = await SignedInAsync();
        using var answer = await visitor.PostAsync("/preferences/keep", new FormUrlEncodedContent([KeyValuePair.Create("preset", "us")]), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.DoesNotContain(answer.Headers, header => header.Key == "Set-Cookie");
    }

    [Fact]
    public async Task Readings_are_told_in_megapascals()
    {
        var visitor = await SignedInAsync();
        visitor.DefaultRequestHeaders.Add("Cookie", $"{ReaderPreferences.Cookie}={Uri.EscapeDataString(new ReaderPreferences(UnitChoice.Metric with { Pressure = DisplayUnit.Megapascal }, Appearance.System).Key)}");
        var page = await PageAsync(visitor, "/blocks/B1/sets/2025-01-20");
        // As in bar, with the point one place to the left.
        Assert.Equal(["1.150", "1.175", "1.200", "1.225", "1.250"], page.QuerySelectorAll("tbody tr").Select(row => row.Children[3].TextContent));
        Assert.Contains("1.20 ± 0.05 MPa", page.QuerySelector("section p")!.TextContent, StringComparison.Ordinal);
    }

    // Mara at another browser, with cookies of its own; she chose nothing before, unless she keeps what she chose.
    private async Task<HttpClient> SignedInAsync(bool keeps = false)
    {
        if (!keeps)
        {
            await using var db = await served.Host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
            await db.People.ExecuteUpdateAsync(p => p.SetProperty(x => x.Preferences, (string?)null).SetProperty(x => x.Language, (string?)null), TestContext.Current.CancellationToken);
        }

        var visitor = new Visitor(served.Host.Address);
        visitors.Add(visitor);
        Assert.NotNull(await visitor.SignInAsync("Mara"));
        return visitor.Follows;
    }

    private static async Task ChooseAsync(HttpClient visitor, params (string Name, string Value)[] answers)
    {
        var form = await PageAsync(visitor, "/preferences");
        var token = form.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var kept = await visitor.PostAsync(
            "/preferences/keep",
            new FormUrlEncodedContent(answers.Append(("__RequestVerificationToken", token)).Select(a => KeyValuePair.Create(a.Item1, a.Item2))),
            TestContext.Current.CancellationToken);
        Assert.Matches(">(Kept|Guardado)[.]<", await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private static async Task<string> TextAsync(HttpClient visitor, string path) => (await PageAsync(visitor, path)).Body!.TextContent;

    private static async Task<IDocument> PageAsync(HttpClient visitor, string path) =>
        await new HtmlParser().ParseDocumentAsync(await visitor.GetStringAsync(path, TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);

    private static string? DarkMedia(IDocument page) => page.QuerySelector("link[href*='dark']")!.GetAttribute("media");
}
