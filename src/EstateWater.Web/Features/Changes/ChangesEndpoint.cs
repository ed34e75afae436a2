using System.Security.Claims;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
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
    public static void MapChanges(this IEndpointRouteBuilder routes) => routes.MapPost(Path, TakeBackAsync)
        .RequireFormToken("Open the record of changes again and take the change back there.").RequireAuthorization(Policies.Plan);

    private static async Task<RedirectHttpResult> TakeBackAsync([FromForm] int change, [FromForm] string? by, ClaimsPrincipal user, ChangesQuery query, CancellationToken cancellation)
    {
        var who = user.PersonName() ?? by?.Trim();
        var isDone = !string.IsNullOrEmpty(who) && await query.UndoAsync(change, who, cancellation) is null;
        return TypedResults.LocalRedirect(isDone ? "/changes" : RefusedHref);
    }
}
