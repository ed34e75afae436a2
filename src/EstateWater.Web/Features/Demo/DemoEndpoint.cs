using EstateWater.Data.Model;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace EstateWater.Web.Features.Demo;

/// <summary>Takes the role in which the demo is looked at. Outside of the demo there is no such address.</summary>
public static class DemoEndpoint
{
    private const string OpenAgain = "Open the page again and choose a role there.";

    /// <summary>Adds it, in the demo.</summary>
    public static void MapDemo(this IEndpointRouteBuilder routes)
    {
        if (routes.ServiceProvider.GetRequiredService<ServeOptions>().Demo)
        {
            routes.MapPost(SignInPaths.Demo, Choose).RequireFormToken(OpenAgain).RequireAuthorization(Policies.SignedIn);
        }
    }

    private static Results<RedirectHttpResult, ProblemHttpResult> Choose([FromForm] string? role, HttpContext context, Landing landing)
    {
        if (!Enum.TryParse<PersonRole>(role, out var chosen) || !Enum.IsDefined(chosen))
        {
            return TypedResults.Problem(OpenAgain, statusCode: StatusCodes.Status400BadRequest);
        }

        context.Response.Cookies.Append(DemoVisitor.RoleCookie, chosen.ToString(), new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, IsEssential = true });
        return TypedResults.LocalRedirect(landing.Of(chosen));
    }
}
