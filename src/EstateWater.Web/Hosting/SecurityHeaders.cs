namespace EstateWater.Web.Hosting;

/// <summary>Headers that keep a page to itself: its own scripts only, no framing, no guessing of types.</summary>
public static class SecurityHeaders
{
    // Inline style attributes stay allowed: the components that draw charts and dialogs set them.
    private const string ContentSecurityPolicy =
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; " +
        "connect-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Sends them with every answer.</summary>
    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use((context, next) =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = ContentSecurityPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "same-origin";
            return next(context);
        });
}
