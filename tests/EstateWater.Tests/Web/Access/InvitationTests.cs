using System.Net;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Access;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Access;

public sealed class InvitationTests : IAsyncLifetime
{
    private readonly FakeTimeProvider time = new(DateTimeOffset.UtcNow);
    private RunningHost host = null!;
    private Visitor guest = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        host = await RunningHost.StartEmptyAsync(null, time);
        await host.Manager.StartAsync(host.App.Services.GetRequiredService<FirstStart>().Begin(), "Mara", Visitor.Password);
        guest = new Visitor(host.Address);
    }

    public async ValueTask DisposeAsync()
    {
        guest.Dispose();
        await host.DisposeAsync();
    }

    [Fact]
    public async Task A_link_makes_one_person_of_its_role_and_is_used_up()
    {
        var link = await host.Manager.InviteAsync("Ben  Díaz", "irrigator");
        Assert.Equal("/sets", await guest.JoinAsync(link));
        Assert.Equal(HttpStatusCode.OK, (await guest.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        using var second = new Visitor(host.Address);
        Assert.Equal(HttpStatusCode.Gone, (await second.Stays.GetAsync(link, Cancellation)).StatusCode);
        using var late = await second.SendAsync(link, "join", ("password", Visitor.Password));
        Assert.Equal(HttpStatusCode.BadRequest, late.StatusCode); // That page has no token to send.
        await using var db = await OpenAsync();
        Assert.Equal(("Ben Díaz", PersonRole.Irrigator), await db.People.Where(p => p.UserName != "Mara").Select(p => ValueTuple.Create(p.UserName!, p.Role)).SingleAsync(Cancellation));
        Assert.Equal(["Ben Díaz joined as irrigator", "Invited Ben Díaz as irrigator"], await db.Changes.OrderByDescending(c => c.Id).Select(c => c.What).Take(2).ToListAsync(Cancellation));
    }

    [Fact]
    public async Task Two_who_had_the_link_open_become_one_person()
    {
        var link = await host.Manager.InviteAsync("Ben", "irrigator");
        using var other = new Visitor(host.Address);
        var answers = await Task.WhenAll(
            guest.SendAsync(link, "join", ("password", Visitor.Password)), other.SendAsync(link, "join", ("password", Visitor.Password + "!")));
        Assert.Single(answers, a => Visitor.Where(a) == "/sets");
        await using var db = await OpenAsync();
        Assert.Equal(2, await db.People.CountAsync(Cancellation));
    }

    [Fact]
    public async Task A_link_older_than_a_week_opens_nothing()
    {
        var link = await host.Manager.InviteAsync("Ben", "irrigator");
        time.Advance(TimeSpan.FromDays(6.9));
        Assert.Equal(HttpStatusCode.OK, (await guest.Stays.GetAsync(link, Cancellation)).StatusCode);
        time.Advance(TimeSpan.FromDays(0.2));
        using var answer = await guest.Stays.GetAsync(link, Cancellation);
        Assert.Equal(HttpStatusCode.Gone, answer.StatusCode);
        Assert.Contains("a link is good for a week", (await Visitor.ReadAsync(answer)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_taken_back_opens_nothing_and_the_record_says_who_did_it()
    {
        var link = await host.Manager.InviteAsync("Ben", "irrigator");
        using var answer = await host.Manager.SendAsync("/people", "withdraw-1");
        Assert.Equal("/people", Visitor.Where(answer));
        Assert.Equal(HttpStatusCode.Gone, (await guest.Stays.GetAsync(link, Cancellation)).StatusCode);
        await using var db = await OpenAsync();
        var last = await db.Changes.OrderByDescending(c => c.Id).FirstAsync(Cancellation);
        Assert.Equal(("Mara", "Took the link of Ben back"), (last.By, last.What));
    }

    [Fact]
    public async Task The_secret_is_kept_as_its_hash_alone()
    {
        var secret = (await host.Manager.InviteAsync("Ben", "irrigator"))["/join/".Length..];
        Assert.True(secret.Length * 6 >= 128, $"{secret.Length} signs of 6 bits");
        await using var db = await OpenAsync();
        Assert.Equal(OneTimeSecret.Hash(secret), (await db.Invitations.SingleAsync(Cancellation)).SecretHash);
        var page = await Visitor.ReadAsync(await host.Manager.Stays.GetAsync("/people", Cancellation));
        Assert.DoesNotContain(secret, page.DocumentElement.OuterHtml, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_link_for_the_same_name_takes_the_first_back()
    {
        var first = await host.Manager.InviteAsync("Ben", "irrigator");
        await host.Manager.InviteAsync("Ben", "technician");
        Assert.Equal(HttpStatusCode.Gone, (await guest.Stays.GetAsync(first, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused_in_words()
    {
        using var answer = await host.Manager.SendAsync("/people", "invite", ("name", " mara "), ("role", "Irrigator"));
        var page = await Visitor.ReadAsync(answer);
        Assert.Contains("is here already", page.QuerySelector("main [role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector(".new-link"));
    }

    [Fact]
    public async Task A_forgotten_password_is_set_anew_by_a_link_and_the_old_one_and_its_sessions_end()
    {
        await guest.JoinAsync(await host.Manager.InviteAsync("Ben", "irrigator"));
        using var made = await host.Manager.SendAsync("/people", $"password-{await IdAsync("Ben")}");
        var link = new Uri((await Visitor.ReadAsync(made)).QuerySelector(".new-link input")!.GetAttribute("value")!).AbsolutePath;
        using var again = new Visitor(host.Address);
        Assert.Equal("/sets", await again.JoinAsync(link, "other words of mine"));
        Assert.Equal(HttpStatusCode.Redirect, (await guest.Stays.GetAsync("/sets", Cancellation)).StatusCode);
        using var third = new Visitor(host.Address);
        Assert.Null(await third.SignInAsync("Ben"));
        Assert.Equal("/sets", await third.SignInAsync("Ben", "other words of mine"));
    }

    private async Task<string> IdAsync(string name)
    {
        await using var db = await OpenAsync();
        return await db.People.Where(p => p.UserName == name).Select(p => p.Id).SingleAsync(Cancellation);
    }

    private Task<EstateDb> OpenAsync() => host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);
}
