using EstateWater.Web.Access;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace EstateWater.Web.Features.Changes;

/// <summary>Takes a change back.</summary>
public static class ChangesEndpoint
{
    /// <summary>Where the form of a change is posted.</summary>
    public const string Path = "/changes/undo";

    /// <summary>Where the record says that a change could not be taken back.</summary>
    public const string RefusedHref = "/changes?undo=refused";

    /// <summary>Adds it.</summary>
    public static void MapChanges(this IEndpointRouteBuilder routes) => routes.MapPost(Path, TakeBackAsync).DisableAntiforgery().RequireAuthorization(Policies.Plan);

    // The token is checked here, so that a form without one is answered in words and not by an error page that reads the form again.
    private static async Task<Results<RedirectHttpResult, ProblemHttpResult>> TakeBackAsync(
        [FromForm] int change, [FromForm] string? by, HttpContext context, IAntiforgery antiforgery, ChangesQuery query, CancellationToken cancellation)
    {
        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return TypedResults.Problem("Open the record of changes again and take the change back there.", statusCode: StatusCodes.Status400BadRequest);
        }

        var who = context.User.PersonName() ?? by?.Trim();
        var isDone = !string.IsNullOrEmpty(who) && await query.UndoAsync(change, who, cancellation) is null;
        return TypedResults.LocalRedirect(isDone ? "/changes" : RefusedHref);
    }
}
