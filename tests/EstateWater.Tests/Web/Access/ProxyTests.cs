using System.Net;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Access;

/// <summary>Who asks, where a proxy stands between. Addresses are those that RFC 5737 keeps for examples.</summary>
public sealed class ProxyTests
{
    private const string ForwardedFor = "X-Forwarded-For";
    private const string Phone = "203.0.113.7";

    private static readonly ServeOptions Behind = new() { Proxies = [IPAddress.Loopback] };

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_phone_behind_a_known_proxy_has_its_own_tries()
    {
        await using var host = await RunningHost.StartEmptyAsync(null, like: Behind);
        Assert.Equal(HttpStatusCode.TooManyRequests, await LastOfTooManyTriesAsync(host, _ => Phone));
        Assert.Equal(HttpStatusCode.BadRequest, await TryAsync(host, "203.0.113.8"));
    }

    [Fact]
    public async Task What_a_phone_itself_says_of_its_address_gains_no_tries()
    {
        await using var host = await RunningHost.StartEmptyAsync(null, like: Behind);
        Assert.Equal(HttpStatusCode.TooManyRequests, await LastOfTooManyTriesAsync(host, i => $"198.51.100.{i}, {Phone}"));
    }

    [Fact]
    public async Task From_proxy_to_proxy_the_first_unknown_address_is_the_phones()
    {
        await using var host = await RunningHost.StartEmptyAsync(null, like: Behind with { Proxies = [IPAddress.Loopback, IPAddress.Parse("192.0.2.1")] });
        Assert.Equal(HttpStatusCode.TooManyRequests, await LastOfTooManyTriesAsync(host, i => $"198.51.100.{i}, {Phone}, 192.0.2.1"));
        Assert.Equal(HttpStatusCode.BadRequest, await TryAsync(host, "203.0.113.8, 192.0.2.1"));
    }

    // The framework would believe anyone when this variable is set.
    [Theory]
    [InlineData(null)]
    [InlineData("true")]
    public async Task Without_a_known_proxy_no_header_is_believed(string? everybody)
    {
        Environment.SetEnvironmentVariable("ASPNETCORE_FORWARDEDHEADERS_ENABLED", everybody);
        try
        {
            await using var host = await RunningHost.StartEmptyAsync(null);
            Assert.Equal(HttpStatusCode.TooManyRequests, await LastOfTooManyTriesAsync(host, i => $"198.51.100.{i}"));
        }
        finally
        {
            Environment.SetEnvironmentVariable("ASPNETCORE_FORWARDEDHEADERS_ENABLED", null);
        }
    }

    [Fact]
    public async Task A_proxy_that_is_not_the_named_one_is_not_believed()
    {
        await using var host = await RunningHost.StartEmptyAsync(null, like: Behind with { Proxies = [IPAddress.Parse("192.0.2.1")] });
        Assert.Equal(HttpStatusCode.TooManyRequests, await LastOfTooManyTriesAsync(host, i => $"198.51.100.{i}"));
    }

    [Theory]
    [InlineData(true, "https")]
    [InlineData(false, "http")]
    public async Task The_cookie_and_links_are_for_https_where_a_known_proxy_says_so(bool isKnown, string scheme)
    {
        await using var host = await RunningHost.StartEmptyAsync(null, like: isKnown ? Behind : null);
        var mara = host.Manager;
        await mara.StartAsync(host.App.Services.GetRequiredService<FirstStart>().Begin(), "Mara", Visitor.Password);
        mara.Stays.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        using var made = await mara.SendAsync("/people", "invite", ("name", "Ben"), ("role", "irrigator"));
        Assert.StartsWith($"{scheme}://{host.Address.Authority}/join/", (await Visitor.ReadAsync(made)).QuerySelector(".new-link input")!.GetAttribute("value"), StringComparison.Ordinal);

        using var changed = await mara.SendAsync("/account", "change-password", ("current", Visitor.Password), ("next", "other words of mine"));
        var cookie = changed.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("estate-water-session=", StringComparison.Ordinal));
        Assert.Equal(isKnown, cookie.Contains("; secure", StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("X-Forwarded-For", Phone)]
    [InlineData("X-Forwarded-For", "127.0.0.1")]
    [InlineData("Forwarded", "for=127.0.0.1")]
    [InlineData("Via", "1.1 gate")]
    public async Task The_demo_answers_nobody_through_a_proxy_whatever_it_was_told_of_proxies(string header, string value)
    {
        await using var host = await RunningHost.StartEmptyAsync(StoredEstate.Contents, like: Behind with { Demo = true });
        Assert.Equal(HttpStatusCode.OK, (await host.Http.GetAsync("/methods", Cancellation)).StatusCode);
        host.Http.DefaultRequestHeaders.Add(header, value);
        Assert.Equal(HttpStatusCode.Unauthorized, (await host.Http.GetAsync("/methods", Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await host.Http.GetAsync("/", Cancellation)).StatusCode);
    }

    [Theory]
    [InlineData("127.0.0.1", null, true)]
    [InlineData("::1", null, true)]
    [InlineData("::ffff:127.0.0.1", null, true)]
    [InlineData("192.0.2.9", null, false)]
    [InlineData("192.0.2.9", "127.0.0.1", false)]
    [InlineData("192.0.2.9", "::1", false)]
    public async Task The_demo_lets_in_its_own_computer_alone_and_no_header_opens_it(string address, string? forwardedFor, bool isLetIn)
    {
        await using var host = await RunningHost.StartEmptyAsync(null, like: new ServeOptions { Demo = true });
        await using var scope = host.App.Services.CreateAsyncScope();
        var context = new DefaultHttpContext { RequestServices = scope.ServiceProvider, Connection = { RemoteIpAddress = IPAddress.Parse(address) } };
        if (forwardedFor is not null)
        {
            context.Request.Headers[ForwardedFor] = forwardedFor;
        }

        Assert.Equal(isLetIn, (await context.AuthenticateAsync()).Succeeded);
    }

    private static async Task<HttpStatusCode> LastOfTooManyTriesAsync(RunningHost host, Func<int, string> forwardedFor)
    {
        for (var tries = 0; tries < TryLimit.TriesAMinute; tries++)
        {
            Assert.Equal(HttpStatusCode.BadRequest, await TryAsync(host, forwardedFor(tries)));
        }

        return await TryAsync(host, forwardedFor(TryLimit.TriesAMinute));
    }

    // A form without its token is refused, and is a try all the same.
    private static async Task<HttpStatusCode> TryAsync(RunningHost host, string forwardedFor)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/start") { Content = new FormUrlEncodedContent([new("_handler", "start")]) };
        request.Headers.Add(ForwardedFor, forwardedFor);
        using var answer = await host.Manager.Stays.SendAsync(request, Cancellation);
        return answer.StatusCode;
    }
}
