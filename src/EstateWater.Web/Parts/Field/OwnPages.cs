namespace EstateWater.Web.Parts.Field;

/// <summary>Tells a request of our own pages from one that another site made the browser send.</summary>
public static class OwnPages
{
    /// <summary>A header that only a script of ours sets: another site's form cannot, and its script may not.</summary>
    public const string Header = "X-Estate-Entry";

    /// <summary>Refuses what other pages send.</summary>
    /// <param name="route">What takes it.</param>
    /// <param name="what">What is taken, as the beginning of a sentence, such as “Photos”.</param>
    public static RouteHandlerBuilder OnlyFromOwnPages(this RouteHandlerBuilder route, string what) => route.AddEndpointFilter(async (context, next) =>
        Sent(context.HttpContext.Request)
            ? await next(context)
            : TypedResults.Problem($"{what} are taken from the estate’s own pages only.", statusCode: StatusCodes.Status403Forbidden));

    /// <summary>Whether the request may be one of ours. What the browser says of its origin must agree where it says anything.</summary>
    public static bool Sent(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers.Origin.ToString();
        return request.Headers.ContainsKey(Header)
            && site is "" or "same-origin"
            && (origin.Length == 0 || string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase));
    }
}
