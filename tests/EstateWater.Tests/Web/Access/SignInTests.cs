using System.Net;
using System.Net.Http.Json;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Access;
using EstateWater.Web.Features.Sets;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Access;

public sealed class SignInTests : IAsyncLifetime
{
    private readonly FakeTimeProvider time = new(DateTimeOffset.UtcNow);
    private RunningHost host = null!;
    private Visitor ben = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        host = await RunningHost.StartEmptyAsync(null, time);
        await host.Manager.StartAsync(host.App.Services.GetRequiredService<FirstStart>().Begin(), "Mara", Visitor.Password);
        ben = new Visitor(host.Address);
        await ben.JoinAsync(await host.Manager.InviteAsync("Ben", "irrigator"));
    }

    public async ValueTask DisposeAsync()
    {
        ben.Dispose();
        await host.DisposeAsync();
    }

    [Theory]
    [InlineData("/sign-in", "/week")]
    [InlineData("/sign-in?return=%2F", "/week")]
    [InlineData("/sign-in?return=%2Fblocks%2FB1%3Frange%3D2w", "/blocks/B1?range=2w")]
    [InlineData("/sign-in?return=https%3A%2F%2Felsewhere.example%2F", "/week")]
    [InlineData("/sign-in?return=%2F%2Felsewhere.example%2F", "/week")]
    [InlineData("/sign-in?return=%2F%5Celsewhere.example%2F", "/week")]
    [InlineData("/sign-in?return=%2F%09%2Felsewhere.example%2F", "/week")]
    [InlineData("/sign-in?return=javascript%3Aalert(1)", "/week")]
    public async Task After_signing_in_one_goes_on_within_the_program_only(string page, string leadsTo)
    {
        using var visitor = new Visitor(host.Address);
        Assert.Equal(leadsTo, await visitor.SignInAsync("mara", page: page));
    }

    [Fact]
    public async Task The_account_leads_back_in_words_and_the_header_says_who_is_signed_in()
    {
        Assert.Equal("Back to the week", (await PageAsync(host.Manager, "/account")).QuerySelector("p a.field-link")!.TextContent);
        Assert.Equal("Volver a los riegos", (await PageAsync(ben, "/account?lang=es")).QuerySelector("p a.field-link")!.TextContent);
        Assert.Equal("Account: Mara", (await PageAsync(host.Manager, "/people")).QuerySelector("header nav a[href='/account']")!.TextContent);

        // This page is kept for all managers alike.
        Assert.Equal("Account", (await PageAsync(host.Manager, "/")).QuerySelector("header nav a[href='/account']")!.TextContent);
    }

    [Fact]
    public async Task Whoever_cannot_bring_the_estate_in_is_told_to_ask_the_manager()
    {
        var page = await PageAsync(ben, "/");
        Assert.Equal("No estate yet", page.QuerySelector("h1")!.TextContent);
        Assert.EndsWith("The manager brings the estate in: ask them.", page.QuerySelector("h1 + p")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("main code"));
        Assert.NotEmpty((await PageAsync(host.Manager, "/")).QuerySelectorAll("main code"));
    }

    [Theory]
    [InlineData("Mara", "wrong words of mine")]
    [InlineData("Nora", Visitor.Password)]
    [InlineData("", "")]
    public async Task A_wrong_name_or_password_is_refused_in_the_same_words(string name, string password)
    {
        using var visitor = new Visitor(host.Address);
        using var answer = await visitor.SendAsync("/sign-in", "password", ("name", name), ("password", password));
        var page = await Visitor.ReadAsync(answer);
        Assert.StartsWith("That did not work.", page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(name, page.QuerySelector("input[name=name]")!.GetAttribute("value") ?? "");
        Assert.Equal(HttpStatusCode.Redirect, (await visitor.Stays.GetAsync("/", Cancellation)).StatusCode);
    }

    [Fact]
    public async Task After_ten_wrong_passwords_the_right_one_is_refused_too_until_a_manager_lets_them_in()
    {
        using var visitor = new Visitor(host.Address);
        for (var tries = 0; tries < SignInSetup.FailuresToLockOut; tries++)
        {
            Assert.Null(await visitor.SignInAsync("Ben", "wrong words of mine"));
        }

        Assert.Null(await visitor.SignInAsync("Ben"));

        // Whoever is signed in already stays so: guessing at a name ends nobody's work.
        Assert.Equal(HttpStatusCode.OK, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        Assert.Null(await host.Manager.SignInAsync("Nobody"));
        using var scope = host.App.Services.CreateScope();
        Assert.Null(await scope.ServiceProvider.GetRequiredService<PeopleDesk>().UnlockAsync(await IdAsync("Ben"), "Mara", Cancellation));
        Assert.Equal("/sets", await visitor.SignInAsync("Ben"));
    }

    [Fact]
    public async Task The_cookie_is_out_of_reach_of_scripts_and_other_sites()
    {
        using var visitor = new Visitor(host.Address);
        using var answer = await visitor.SendAsync("/sign-in", "password", ("name", "Ben"), ("password", Visitor.Password), ("stay", "true"));
        var cookie = answer.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("estate-water-session=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("expires=", cookie, StringComparison.OrdinalIgnoreCase);
        using var shared = await visitor.SendAsync("/sign-in", "password", ("name", "Ben"), ("password", Visitor.Password));
        Assert.DoesNotContain("expires=", shared.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("estate-water-session=", StringComparison.Ordinal)), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/account")]
    [InlineData("/people")]
    public async Task A_form_without_its_token_does_nothing(string page)
    {
        using var body = new FormUrlEncodedContent([new("_handler", "sign-out"), new("name", "Ben"), new("password", Visitor.Password)]);
        Assert.Equal(HttpStatusCode.BadRequest, (await host.Manager.Stays.PostAsync(page, body, Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await host.Manager.Stays.GetAsync("/people", Cancellation)).StatusCode);
    }

    [Fact]
    public async Task Signing_out_ends_the_session_here()
    {
        using var answer = await ben.SendAsync("/account", "sign-out");
        Assert.Equal("/sign-in", Visitor.Where(answer));
        Assert.StartsWith("/sign-in?return=%2Fsets", Visitor.Where(await ben.Stays.GetAsync("/sets", Cancellation)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("role", "technician", "Ben is technician now")]
    [InlineData("lock", "", "Locked Ben out")]
    [InlineData("everywhere", "", "Signed Ben out everywhere")]
    public async Task What_a_manager_does_to_someone_ends_what_they_have_open_and_is_recorded(string act, string role, string recorded)
    {
        Assert.Equal(HttpStatusCode.OK, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        using var done = await host.Manager.SendAsync("/people", $"{act}-{await IdAsync("Ben")}", ("role", role));
        Assert.Equal("/people", Visitor.Where(done));
        Assert.Equal(HttpStatusCode.Unauthorized, (await PostEntryAsync(ben)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        await using var db = await OpenAsync();
        var last = await db.Changes.OrderByDescending(c => c.Id).FirstAsync(Cancellation);
        Assert.Equal(("Mara", recorded, ChangeKind.Person), (last.By, last.What, last.Kind));
        using var visitor = new Visitor(host.Address);
        Assert.Equal(act switch { "role" => "/readings", "lock" => null, _ => "/sets" }, await visitor.SignInAsync("Ben"));
    }

    [Theory]
    [InlineData("role", "Irrigator")]
    [InlineData("lock", "")]
    public async Task The_only_manager_stays_one(string act, string role)
    {
        using var answer = await host.Manager.SendAsync("/people", $"{act}-{await IdAsync("Mara")}", ("role", role));
        Assert.Contains("the only manager", (await Visitor.ReadAsync(answer)).QuerySelector("main [role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await host.Manager.Stays.GetAsync("/people", Cancellation)).StatusCode);
    }

    // A role that another process changed in the store is noticed by a command at once and by a page within half a minute.
    [Fact]
    public async Task A_change_in_the_store_alone_is_noticed_by_commands_at_once_and_by_pages_soon()
    {
        Assert.Equal(HttpStatusCode.OK, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        await using (var db = await OpenAsync())
        {
            await db.People.Where(p => p.UserName == "Ben").ExecuteUpdateAsync(p => p.SetProperty(x => x.LockedAt, time.GetUtcNow()), Cancellation);
        }

        Assert.Equal(HttpStatusCode.OK, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        time.Advance(Sessions.HoldsFor + TimeSpan.FromSeconds(1));
        Assert.Equal(HttpStatusCode.Redirect, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        Assert.InRange(Sessions.HoldsFor, TimeSpan.Zero, TimeSpan.FromSeconds(60));
    }

    [Fact]
    public async Task A_command_asks_the_store_at_once()
    {
        Assert.Equal(HttpStatusCode.OK, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        await using (var db = await OpenAsync())
        {
            await db.People.Where(p => p.UserName == "Ben").ExecuteUpdateAsync(p => p.SetProperty(x => x.Role, PersonRole.Owner), Cancellation);
        }

        Assert.Equal(HttpStatusCode.Unauthorized, (await PostEntryAsync(ben)).StatusCode);
    }

    [Fact]
    public async Task A_script_is_answered_by_status_and_never_led_to_a_page()
    {
        using var nobody = new Visitor(host.Address);
        using var unknown = await PostEntryAsync(nobody);
        Assert.Equal((HttpStatusCode.Unauthorized, "application/problem+json"), (unknown.StatusCode, unknown.Content.Headers.ContentType!.MediaType));
        using var technician = new Visitor(host.Address);
        await technician.JoinAsync(await host.Manager.InviteAsync("Tess", "technician"));
        using var refused = await PostEntryAsync(technician);
        Assert.Equal((HttpStatusCode.Forbidden, "application/problem+json"), (refused.StatusCode, refused.Content.Headers.ContentType!.MediaType));
    }

    [Fact]
    public async Task A_page_that_is_not_for_a_role_says_so()
    {
        using var answer = await ben.Stays.GetAsync("/week", Cancellation);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal("This page is not for your role", (await Visitor.ReadAsync(answer)).QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task Another_password_signs_the_other_phones_out_and_keeps_this_one()
    {
        using var phone = new Visitor(host.Address);
        await phone.SignInAsync("Ben");
        using var changed = await ben.SendAsync("/account", "change-password", ("current", Visitor.Password), ("next", "other words of mine"));
        Assert.Contains("The password is changed", (await Visitor.ReadAsync(changed)).QuerySelector("[role=status]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await ben.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await phone.Stays.GetAsync("/sets", Cancellation)).StatusCode);
    }

    [Fact]
    public async Task The_page_is_read_in_spanish_and_keeps_where_one_goes_on()
    {
        using var visitor = new Visitor(host.Address);
        var page = await Visitor.ReadAsync(await visitor.Stays.GetAsync("/sign-in?return=%2Fsets&lang=es", Cancellation));
        Assert.Equal(("es", "Entrar"), (page.DocumentElement.GetAttribute("lang"), page.QuerySelector("h1")!.TextContent));
        Assert.Equal("/sign-in?return=%2Fsets&lang=en", page.QuerySelector(".field-language")!.GetAttribute("href"));
    }

    private static Task<HttpResponseMessage> PostEntryAsync(Visitor visitor) =>
        visitor.Stays.PostAsJsonAsync(ConfirmationEndpoint.Path, new ConfirmationMessage { EntryId = Guid.NewGuid() }, Cancellation);

    private async Task<string> IdAsync(string name)
    {
        await using var db = await OpenAsync();
        return await db.People.Where(p => p.UserName == name).Select(p => p.Id).SingleAsync(Cancellation);
    }

    private Task<EstateDb> OpenAsync() => host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);

    private static async Task<AngleSharp.Dom.IDocument> PageAsync(Visitor visitor, string address) =>
        await Visitor.ReadAsync(await visitor.Follows.GetAsync(address, Cancellation));
}
