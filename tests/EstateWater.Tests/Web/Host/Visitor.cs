using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace EstateWater.Tests.Web.Host;

/// <summary>Someone with a browser of their own: cookies, and forms filled in as a page shows them.</summary>
internal sealed class Visitor : IDisposable
{
    /// <summary>Long enough and of no list.</summary>
    public const string Password = "gate rain seven boots";

    private readonly CookieContainer cookies = new();

    public Visitor(Uri address)
    {
        Stays = new HttpClient(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = address };
        Follows = new HttpClient(new HttpClientHandler { CookieContainer = cookies }) { BaseAddress = address };
    }

    /// <summary>Requests that stop at a redirect.</summary>
    public HttpClient Stays { get; }

    /// <summary>Requests that follow redirects.</summary>
    public HttpClient Follows { get; }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Becomes the first manager.</summary>
    public async Task StartAsync(string code, string name, string password)
    {
        using var answer = await SendAsync("/start", "start", ("code", code), ("name", name), ("password", password));
        Assert.Equal("/week", Where(answer));
    }

    /// <summary>Signs in; gives where that leads, null when it did not work.</summary>
    public async Task<string?> SignInAsync(string name, string password = Password, string page = "/sign-in")
    {
        using var answer = await SendAsync(page, "password", ("name", name), ("password", password), ("stay", "true"));
        return Where(answer);
    }

    /// <summary>Uses an invitation; gives where that leads, null when it did not work.</summary>
    public async Task<string?> JoinAsync(string link, string password = Password)
    {
        using var answer = await SendAsync(link, "join", ("password", password));
        return Where(answer);
    }

    /// <summary>Invites someone; gives the path of the link.</summary>
    public async Task<string> InviteAsync(string name, string role)
    {
        using var answer = await SendAsync("/people", "invite", ("name", name), ("role", role));
        var page = await ReadAsync(answer);
        var link = page.QuerySelector(".new-link input")?.GetAttribute("value") ?? throw new InvalidOperationException(page.QuerySelector("[role=alert]")?.TextContent);
        return new Uri(link).AbsolutePath;
    }

    /// <summary>Fills in the form of a page that has a name, and sends it.</summary>
    public async Task<HttpResponseMessage> SendAsync(string page, string form, params (string Name, string Value)[] typed)
    {
        using var shown = await Stays.GetAsync(page, Cancellation);
        var document = await ReadAsync(shown);
        var found = document.QuerySelectorAll("form").FirstOrDefault(f => f.QuerySelector("input[name=_handler]")?.GetAttribute("value") == form)
            ?? throw new InvalidOperationException($"{page} ({(int)shown.StatusCode}) has no form {form}.");
        var fields = found.QuerySelectorAll("input[type=hidden]").ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value") ?? "");
        foreach (var (name, value) in typed)
        {
            fields[name] = value;
        }

        using var body = new FormUrlEncodedContent(fields);
        return await Stays.PostAsync(page, body, Cancellation);
    }

    public static async Task<IDocument> ReadAsync(HttpResponseMessage answer) => new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(Cancellation));

    /// <summary>Where an answer leads: a path within the program, a whole address beyond it; null when it is a page.</summary>
    public static string? Where(HttpResponseMessage answer) => answer.Headers.Location switch
    {
        null => null,
        { IsAbsoluteUri: true } to when to.Authority == answer.RequestMessage!.RequestUri!.Authority => to.PathAndQuery,
        var to => to.OriginalString,
    };

    public void Dispose()
    {
        Stays.Dispose();
        Follows.Dispose();
    }
}
