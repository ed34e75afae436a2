using System.Net;
using System.Text;
using EstateWater.Web.Access;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts.Field;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Access;

/// <summary>Who may open and send what, through HTTP, against a table written by hand.</summary>
public sealed class RouteMatrixTests(StaffedEstate estate) : IClassFixture<StaffedEstate>
{
    private const string All = "manager owner irrigator technician";
    private const string Readers = "manager owner";
    private const string Reading = "manager technician";
    private const string Watering = "manager irrigator";
    private const string Anyone = All + " nobody";
    private const string Photo = "/api/confirmations/00000000-0000-0000-0000-000000000001/photo";

    // Method, address, the route it belongs to, and who may. Whoever may is answered by the page or told what is wrong with an empty form.
    private static readonly (string Method, string Address, string Route, string May)[] Table =
    [
        ("GET", "/", "/", All),
        ("GET", "/blocks/B1", "/blocks/{Code}", All),
        ("GET", "/blocks/B1/sets/2025-01-20", "/blocks/{Code}/sets/{DayText}", All),
        ("GET", "/blocks/B1/soil", "/blocks/{Code}/soil", All),
        ("GET", "/report", "/report", Readers),
        ("GET", "/methods", "/methods", All),
        ("GET", "/news", "/news", All),
        ("GET", "/account", "/account", All),
        ("POST", "/account", "/account", All),
        ("GET", "/preferences", "/preferences", All),
        ("POST", "/preferences/keep", "/preferences/keep", All),
        ("POST", "/passkeys/creation", "/passkeys/creation", All),
        ("POST", "/_blazor/negotiate?negotiateVersion=1", "/_blazor/negotiate", All),
        ("GET", "/owner", "/owner", Readers),
        ("GET", "/week", "/week", Readers),
        ("GET", "/accuracy", "/accuracy", Readers),
        ("POST", "/accuracy", "/accuracy", Readers),
        ("GET", "/accuracy/progress", "/accuracy/progress", Readers),
        ("GET", "/compare?blocks=B1", "/compare", Readers),
        ("GET", "/changes", "/changes", Readers),
        ("POST", "/changes/undo", "/changes/undo", "manager"),
        ("GET", "/people", "/people", "manager"),
        ("POST", "/people", "/people", "manager"),
        ("GET", "/readings", "/readings", Reading),
        ("GET", "/readings/round", "/readings/round", Reading),
        ("POST", "/readings/round/change", "/readings/round/change", "manager"),
        ("POST", "/api/readings", "/api/readings", Reading),
        ("GET", "/sets", "/sets", Watering),
        ("POST", "/api/confirmations", "/api/confirmations", Watering),
        ("POST", Photo, "/api/confirmations/{entryId:guid}/photo", Watering),
        ("GET", Photo, "/api/confirmations/{entryId:guid}/photo", "manager irrigator owner"),
        ("GET", "/sign-in", "/sign-in", Anyone),
        ("GET", "/start", "/start", Anyone),
        ("GET", "/join/nothing", "/join/{Secret}", Anyone),
        ("POST", "/passkeys/request", "/passkeys/request", Anyone),
        ("GET", "/not-found", "/not-found", Anyone),
        ("GET", "/error", "/error", Anyone),
        ("GET", "/nothing.css", NoFile, All),
        ("GET", "/no/such/page", "", All),
        ("GET", "/demo", "/demo", All), // Outside of the demo: no such page.
    ];

    // Of the framework: what a program run from its sources answers to names of files that are none. The rule for all that names no policy holds it.
    private const string NoFile = "{**path:file}";

    // The framework's own, behind the sign-in: the live connection and what belongs to it.
    private static readonly string[] FrameworkRoutes = ["/_blazor", "/_blazor/disconnect", "/_blazor/initializers", "/_framework/opaque-redirect"];

    public static TheoryData<string, string, string> Rows => new(Table.Select(row => (row.Method, row.Address, row.May)));

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task Only_those_who_may_are_let_through(string method, string address, string may)
    {
        var passed = new List<string>();
        foreach (var (role, visitor) in estate.Visitors)
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), address);
            if (address.StartsWith("/api", StringComparison.Ordinal))
            {
                request.Headers.Add(OwnPages.Header, "1");
                request.Content = method == "POST" ? new StringContent("{}", Encoding.UTF8, "application/json") : null;
            }

            using var answer = await visitor.Stays.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Cancellation);
            var isSentToSignIn = EstateWater.Tests.Web.Host.Visitor.Where(answer)?.StartsWith("/sign-in", StringComparison.Ordinal) == true && !address.StartsWith("/start", StringComparison.Ordinal);
            if (role != "nobody")
            {
                Assert.False(isSentToSignIn || answer.StatusCode == HttpStatusCode.Unauthorized, $"{role} is not signed in any more");
            }

            if (!isSentToSignIn && answer.StatusCode is not (HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden))
            {
                Assert.NotEqual(HttpStatusCode.InternalServerError, answer.StatusCode);
                passed.Add(role);
            }
        }

        Assert.Equal(may.Split(' ').Order(), passed.Order());
    }

    [Fact]
    public void Every_address_of_the_program_stands_in_the_table()
    {
        var known = Table.Select(row => row.Route).Concat(FrameworkRoutes).ToHashSet();
        Assert.Empty(Endpoints().Select(e => "/" + e.RoutePattern.RawText!.Trim('/')).Where(route => !known.Contains(route)).Distinct());
    }

    [Fact]
    public void Every_address_names_its_policy_or_says_that_it_needs_no_sign_in()
    {
        Assert.NotEmpty(Endpoints());
        Assert.All(Endpoints(), endpoint =>
        {
            var isOpen = endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null;
            var named = endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Select(data => data.Policy).ToList();
            Assert.True(isOpen ? named.Count == 0 : named.Count > 0 && named.TrueForAll(Policies.All.Contains), $"{endpoint.DisplayName}: open {isOpen}, policies {string.Join(", ", named)}");
        });
    }

    [Fact]
    public async Task The_header_of_a_page_leads_each_role_only_where_it_may_go()
    {
        foreach (var (role, visitor) in estate.Visitors.Where(v => v.Key != "nobody"))
        {
            using var answer = await visitor.Stays.GetAsync("/methods", Cancellation);
            var links = (await EstateWater.Tests.Web.Host.Visitor.ReadAsync(answer)).QuerySelectorAll("header nav a").Select(a => a.GetAttribute("href")!).ToList();
            Assert.Equal(Table.Where(row => row.Method == "GET" && row.May.Split(' ').Contains(role)).Select(row => row.Address).Intersect(["/owner", "/", "/week", "/report", "/sets", "/readings", "/readings/round", "/changes", "/accuracy", "/methods", "/people", "/preferences", "/account"]).Order(), links.Order());
        }
    }

    // The estate page is kept for all: what is kept of one role's must not be shown to another.
    [Fact]
    public async Task A_kept_page_is_kept_for_each_role_by_itself()
    {
        foreach (var role in new[] { "manager", "irrigator", "manager", "owner" })
        {
            using var answer = await estate.Visitors[role].Stays.GetAsync("/", Cancellation);
            var page = await EstateWater.Tests.Web.Host.Visitor.ReadAsync(answer);
            Assert.Equal(role == "manager", page.QuerySelector("header a[href='/people']") is not null);
            Assert.Equal(role == "irrigator" ? 0 : 2, page.QuerySelectorAll("[data-list] input[name=blocks]").Length);
        }

        using var nobody = await estate.Visitors["nobody"].Stays.GetAsync("/", Cancellation);
        Assert.Equal(HttpStatusCode.Redirect, nobody.StatusCode);
    }

    private IEnumerable<RouteEndpoint> Endpoints() => estate.Host.App.Services.GetServices<EndpointDataSource>()
        .SelectMany(source => source.Endpoints)
        .OfType<RouteEndpoint>()
        .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null && endpoint.RoutePattern.RawText != NoFile);
}
