using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Components.Server.Circuits;

namespace EstateWater.Web.Access;

/// <summary>The sign-in of an open live page: asked after again by itself, and ended when it no longer holds.</summary>
internal sealed class CircuitSession(ILoggerFactory log, Sessions sessions) : RevalidatingServerAuthenticationStateProvider(log)
{
    private static readonly AuthenticationState Nobody = new(new ClaimsPrincipal(new ClaimsIdentity()));

    protected override TimeSpan RevalidationInterval => Sessions.HoldsFor;

    /// <summary>Whether a command may go on; a sign-in that no longer holds is ended, which the page shows at once.</summary>
    public async Task<bool> StandsAsync()
    {
        var state = await GetAuthenticationStateAsync();
        var stands = await sessions.StandsAsync(state.User, anew: true);
        if (!stands)
        {
            SetAuthenticationState(Task.FromResult(Nobody));
        }

        return stands;
    }

    protected override Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken) =>
        sessions.StandsAsync(authenticationState.User, anew: true, cancellationToken);
}

/// <summary>Stands before every command of a live page: what comes from someone whose sign-in was ended is not carried out.</summary>
internal sealed class CommandCheck(AuthenticationStateProvider session) : CircuitHandler
{
    public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(Func<CircuitInboundActivityContext, Task> next) => async context =>
    {
        if (await ((CircuitSession)session).StandsAsync())
        {
            await next(context);
        }
    };
}
