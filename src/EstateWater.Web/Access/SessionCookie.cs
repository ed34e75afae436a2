using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Components.Endpoints;

namespace EstateWater.Web.Access;

/// <summary>The cookie of whoever signed in, and what is answered to those who did not.</summary>
internal static class SessionCookie
{
    public const string Name = "estate-water-session";

    /// <summary>A phone that is used within this time stays signed in.</summary>
    private static readonly TimeSpan Lifetime = TimeSpan.FromDays(30);

    public static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = Name;
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.ExpireTimeSpan = Lifetime;
        options.SlidingExpiration = true;
        options.LoginPath = SignInPaths.SignIn;
        options.ReturnUrlParameter = ReturnAddress.Parameter;
        options.Events = new CookieAuthenticationEvents
        {
            OnValidatePrincipal = CheckAsync,
            OnRedirectToLogin = AskToSignInAsync,
            OnRedirectToAccessDenied = context => RefuseAsync(context.HttpContext, StatusCodes.Status403Forbidden, "Your role may not do this."),
        };
    }

    private static async Task CheckAsync(CookieValidatePrincipalContext context)
    {
        var request = context.HttpContext.Request;
        var onlyReads = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        var sessions = context.HttpContext.RequestServices.GetRequiredService<Sessions>();
        if (!await sessions.StandsAsync(context.Principal!, anew: !onlyReads, context.HttpContext.RequestAborted))
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync(context.Scheme.Name);
        }
    }

    private static Task AskToSignInAsync(RedirectContext<CookieAuthenticationOptions> context)
    {
        if (!IsForPeople(context.HttpContext))
        {
            return RefuseAsync(context.HttpContext, StatusCodes.Status401Unauthorized, "Sign in first.");
        }

        context.Response.Redirect(context.RedirectUri);
        return Task.CompletedTask;
    }

    // A script must see what was refused; a page in place of its answer would look like a success.
    private static Task RefuseAsync(HttpContext context, int status, string why)
    {
        // The page in words is asked for again as this request was; a form would be taken for one of its own.
        if (IsForPeople(context) && HttpMethods.IsGet(context.Request.Method))
        {
            context.Response.StatusCode = status;
            return Task.CompletedTask;
        }

        return TypedResults.Problem(why, statusCode: status).ExecuteAsync(context);
    }

    private static bool IsForPeople(HttpContext context) =>
        !context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
        && (context.GetEndpoint() is not { } endpoint
            || endpoint.Metadata.GetMetadata<ComponentTypeMetadata>() is not null
            || context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase));
}
