using System.Net;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Access;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace EstateWater.Tests.Web.Access;

public sealed class FirstStartTests : IAsyncLifetime
{
    private readonly FakeTimeProvider time = new(DateTimeOffset.UtcNow);
    private RunningHost host = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => host = await RunningHost.StartEmptyAsync(null, time);

    public ValueTask DisposeAsync() => host.DisposeAsync();

    [Fact]
    public async Task Until_there_is_a_manager_every_page_leads_to_the_code()
    {
        var page = await Visitor.ReadAsync(await host.Manager.Follows.GetAsync("/week", Cancellation));
        Assert.Contains("Nobody can sign in yet", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("/start", page.QuerySelector("main a")!.GetAttribute("href"));
        Assert.Empty(page.QuerySelectorAll("form"));
    }

    [Fact]
    public async Task The_code_makes_one_manager_and_no_second()
    {
        var code = First.Begin();
        await host.Manager.StartAsync(Shouted(code), "Mara", Visitor.Password);
        Assert.Equal(HttpStatusCode.OK, (await host.Manager.Stays.GetAsync("/people", Cancellation)).StatusCode);

        Assert.False(First.Accepts(code));
        using var other = new Visitor(host.Address);
        using var late = await other.Stays.GetAsync("/start", Cancellation);
        Assert.Equal("/sign-in", Visitor.Where(late));
        await using var db = await OpenAsync();
        var change = await db.Changes.SingleAsync(Cancellation);
        Assert.Equal(("Mara", ChangeKind.Person), (change.By, change.Kind));
    }

    [Fact]
    public async Task Of_two_who_use_the_code_at_once_one_becomes_manager()
    {
        var code = First.Begin();
        var visitors = Enumerable.Range(0, 4).Select(_ => new Visitor(host.Address)).ToList();
        var answers = await Task.WhenAll(visitors.Select((v, i) => v.SendAsync("/start", "start", ("code", code), ("name", $"Mara {i}"), ("password", Visitor.Password))));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Redirect && Visitor.Where(a) == "/week");
        await using var db = await OpenAsync();
        Assert.Equal(1, await db.People.CountAsync(Cancellation));
        visitors.ForEach(v => v.Dispose());
    }

    [Fact]
    public async Task A_mistake_keeps_what_was_typed_and_does_not_use_the_code_up()
    {
        var code = First.Begin();
        using var answer = await host.Manager.SendAsync("/start", "start", ("code", code), ("name", "Mara"), ("password", "short"));
        var page = await Visitor.ReadAsync(answer);
        Assert.Contains("At least 10 letters", page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(("Mara", code), (page.QuerySelector("input[name=name]")!.GetAttribute("value"), page.QuerySelector("input[name=code]")!.GetAttribute("value")));
        Assert.Null(page.QuerySelector("input[name=password]")!.GetAttribute("value"));
        Assert.True(First.Accepts(code));
    }

    [Theory]
    [InlineData("0000-0000-0000-0000-0000-0000-00", 0)]
    [InlineData("", 0)]
    [InlineData(null, 61)]
    public async Task A_wrong_or_old_code_makes_nobody(string? typed, int minutes)
    {
        var code = First.Begin();
        time.Advance(TimeSpan.FromMinutes(minutes));
        using var answer = await host.Manager.SendAsync("/start", "start", ("code", typed ?? code), ("name", "Mara"), ("password", Visitor.Password));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("This is not the code", (await Visitor.ReadAsync(answer)).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        await using var db = await OpenAsync();
        Assert.False(await db.People.AnyAsync(Cancellation));
    }

    [Fact]
    public async Task Trying_codes_is_stopped_after_thirty_a_minute()
    {
        First.Begin();
        using var shown = await host.Manager.Stays.GetAsync("/start", Cancellation);
        var statuses = new List<HttpStatusCode>();
        for (var tries = 0; tries < 31; tries++)
        {
            using var body = new FormUrlEncodedContent([new("_handler", "start")]);
            using var answer = await host.Manager.Stays.PostAsync("/start", body, Cancellation);
            statuses.Add(answer.StatusCode);
        }

        Assert.Equal([HttpStatusCode.BadRequest, HttpStatusCode.TooManyRequests], statuses.Distinct());
        Assert.Equal(30, statuses.Count(s => s == HttpStatusCode.BadRequest));
    }

    private FirstStart First => host.App.Services.GetRequiredService<FirstStart>();

    // As someone types who reads it from another screen.
    private static string Shouted(string code) => " " + code.Replace("-", " ", StringComparison.Ordinal).Replace('0', 'o').Replace('1', 'l');

    private Task<EstateDb> OpenAsync() => host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);
}
