using EstateWater.Data.Model;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace EstateWater.Web.Features.Demo;

/// <summary>Takes the role in which the demo is looked at. Outside of the demo there is no such address.</summary>
public static class DemoEndpoint
{
    /// <summary>Adds it, in the demo.</summary>
    public static void MapDemo(this IEndpointRouteBuilder routes)
    {
        if (routes.ServiceProvider.GetRequiredService<ServeOptions>().Demo)
        {
            routes.MapPost(SignInPaths.Demo, ChooseAsync).DisableAntiforgery().RequireAuthorization(Policies.SignedIn);
        }
    }

    private static async Task<Results<RedirectHttpResult, ProblemHttpResult>> ChooseAsync([FromForm] string? role, HttpContext context, IAntiforgery forms, Landing landing)
    {
        if (!await forms.IsRequestValidAsync(context) || !Enum.TryParse<PersonRole>(role, out var chosen) || !Enum.IsDefined(chosen))
        {
            return TypedResults.Problem("Open the page again and choose a role there.", statusCode: StatusCodes.Status400BadRequest);
        }

        context.Response.Cookies.Append(DemoVisitor.RoleCookie, chosen.ToString(), new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, IsEssential = true });
        return TypedResults.LocalRedirect(landing.Of(chosen));
    }
}
