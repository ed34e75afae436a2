using System.Net;
using System.Security.Claims;
using System.Text.Encodings.Web;
using EstateWater.Data.Model;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace EstateWater.Web.Access;

/// <summary>Whoever looks at the demo: nobody in particular, in the role they chose, at first the manager's.</summary>
/// <remarks>
/// Only the demo uses it, and the demo can be reached from its own computer alone. A proxy there would make everyone look as
/// if they sat at it, so whoever comes through one is let in by no means: a header that says so shuts, and none opens.
/// </remarks>
internal sealed class DemoVisitor(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string SchemeName = "demo";

    /// <summary>Remembers the role.</summary>
    public const string RoleCookie = "estate-water-demo-role";

    private static readonly string[] ProxyHeaders = [ForwardedHeadersDefaults.XForwardedForHeaderName, "Forwarded", HeaderNames.Via];

    protected override Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        // However the program was brought to listen, from another computer nobody is let in.
        if (Context.Connection.RemoteIpAddress is not { } address || !IPAddress.IsLoopback(address) || ProxyHeaders.Any(Request.Headers.ContainsKey))
        {
            return Task.FromResult(AuthenticateResult.NoResult());
        }

        var role = Enum.TryParse<PersonRole>(Request.Cookies[RoleCookie], out var chosen) && Enum.IsDefined(chosen) ? chosen : PersonRole.Manager;
        var visitor = new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.Role, role.ToString())], SchemeName));
        return Task.FromResult(AuthenticateResult.Success(new AuthenticationTicket(visitor, SchemeName)));
    }
}
