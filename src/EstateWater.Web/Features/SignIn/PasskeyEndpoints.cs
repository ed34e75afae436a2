using EstateWater.Data.Model;
using EstateWater.Web.Access;
using Microsoft.AspNetCore.Antiforgery;
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

    /// <summary>Adds both.</summary>
    public static void MapPasskeys(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(RequestPath, AskAsync).AllowAnonymous().RequireRateLimiting(TryLimit.Name);
        routes.MapPost(CreationPath, MakeAsync).RequireAuthorization(Policies.SignedIn).RequireRateLimiting(TryLimit.Name);
    }

    // Nobody is named: the phone offers the passkeys that it has for this estate.
    private static async Task<Results<ContentHttpResult, ProblemHttpResult>> AskAsync(HttpContext context, IAntiforgery forms, SignInManager<Person> signIn) =>
        await forms.IsRequestValidAsync(context) ? TypedResults.Content(await signIn.MakePasskeyRequestOptionsAsync(null), Json) : ForeignPage;

    private static async Task<Results<ContentHttpResult, ProblemHttpResult>> MakeAsync(HttpContext context, IAntiforgery forms, SignInManager<Person> signIn)
    {
        if (!await forms.IsRequestValidAsync(context) || context.User.PersonId() is not { } id)
        {
            return ForeignPage;
        }

        var name = context.User.PersonName()!;
        return TypedResults.Content(await signIn.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity { Id = id, Name = name, DisplayName = name }), Json);
    }

    private static ProblemHttpResult ForeignPage => TypedResults.Problem("Open the page again.", statusCode: StatusCodes.Status400BadRequest);
}
