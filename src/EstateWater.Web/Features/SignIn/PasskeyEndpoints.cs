using System.Security.Claims;
using EstateWater.Data.Model;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Features.SignIn;

/// <summary>Says to the browser what to ask of a passkey. The answer comes back with a form of the page.</summary>
public static class PasskeyEndpoints
{
    /// <summary>To sign in.</summary>
    public const string RequestPath = "/passkeys/request";

    /// <summary>To make one.</summary>
    public const string CreationPath = "/passkeys/creation";

    private const string Json = "application/json";

    private const string OpenAgain = "Open the page again.";

    /// <summary>Adds both.</summary>
    public static void MapPasskeys(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(RequestPath, AskAsync).RequireFormToken(OpenAgain).AllowAnonymous().RequireRateLimiting(TryLimit.Name);
        routes.MapPost(CreationPath, MakeAsync).RequireFormToken(OpenAgain).RequireAuthorization(Policies.SignedIn).RequireRateLimiting(TryLimit.Name);
    }

    // Nobody is named: the phone offers the passkeys that it has for this estate.
    private static async Task<ContentHttpResult> AskAsync(SignInManager<Person> signIn) => TypedResults.Content(await signIn.MakePasskeyRequestOptionsAsync(null), Json);

    private static async Task<Results<ContentHttpResult, ProblemHttpResult>> MakeAsync(ClaimsPrincipal user, SignInManager<Person> signIn)
    {
        if (user.PersonId() is not { } id)
        {
            return TypedResults.Problem(OpenAgain, statusCode: StatusCodes.Status400BadRequest); // The demo's visitor has no account.
        }

        var name = user.PersonName()!;
        return TypedResults.Content(await signIn.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity { Id = id, Name = name, DisplayName = name }), Json);
    }
}
