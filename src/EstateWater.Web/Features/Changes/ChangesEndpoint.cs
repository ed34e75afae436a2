using Microsoft.AspNetCore.Mvc;

namespace EstateWater.Web.Features.Changes;

/// <summary>Takes a change back.</summary>
public static class ChangesEndpoint
{
    /// <summary>Where the form of a change is posted.</summary>
    public const string Path = "/changes/undo";

    /// <summary>Where the record says that a change could not be taken back.</summary>
    public const string RefusedHref = "/changes?undo=refused";

    /// <summary>Adds it; the form's token is checked.</summary>
    public static void MapChanges(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, async ([FromForm] int change, [FromForm] string? by, ChangesQuery query, CancellationToken cancellation) =>
        {
            var isDone = !string.IsNullOrWhiteSpace(by) && await query.UndoAsync(change, by.Trim(), cancellation) is null;
            return TypedResults.LocalRedirect(isDone ? "/changes" : RefusedHref);
        });
}
