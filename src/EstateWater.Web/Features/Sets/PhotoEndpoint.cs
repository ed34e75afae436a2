using EstateWater.Data.Store;
using EstateWater.Web.Access;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Sets;

/// <summary>Takes the photo of an entry after the entry itself, and shows it.</summary>
public static class PhotoEndpoint
{
    /// <summary>A picture of 1600 px in JPEG is a few hundred kilobytes. [bytes]</summary>
    public const int LargestBytes = 2 * 1024 * 1024;

    private const string Route = ConfirmationEndpoint.Path + "/{entryId:guid}/photo";

    /// <summary>Where the photo of an entry is sent and seen.</summary>
    public static string PathOf(Guid entryId) => $"{ConfirmationEndpoint.Path}/{entryId:D}/photo";

    /// <summary>Adds both.</summary>
    public static void MapPhotos(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(Route, TakeAsync).RequireAuthorization(Policies.Sets).OnlyFromOwnPages("Photos");
        routes.MapGet(Route, ShowAsync).RequireAuthorization(Policies.Photos);
    }

    private static async Task<Results<Created<PhotoReceipt>, Ok<PhotoReceipt>, ProblemHttpResult>> TakeAsync(
        Guid entryId, HttpRequest request, IDbContextFactory<EstateDb> databases, EstateSnapshots snapshots, TimeProvider clock, CancellationToken cancellation)
    {
        var rules = new ConfirmationRules(FieldLanguages.Of(request.HttpContext), UnitChoice.Metric);
        if (await ReadAsync(request, cancellation) is not { } jpeg)
        {
            return Refused(StatusCodes.Status413PayloadTooLarge, rules.PhotoBytes(LargestBytes / 1024 / 1024));
        }

        if (JpegCheck.Mistake(jpeg) is { } mistake)
        {
            return Refused(StatusCodes.Status422UnprocessableEntity, rules.Photo(mistake));
        }

        await using var db = await databases.CreateDbContextAsync(cancellation);
        switch (await SetPhotos.AddAsync(db, entryId, jpeg, clock.GetUtcNow(), cancellation))
        {
            case PhotoStatus.Stored:
                snapshots.Invalidate("A photo of a set arrived.");
                return TypedResults.Created(PathOf(entryId), new PhotoReceipt(entryId));
            case PhotoStatus.StoredBefore:
                return TypedResults.Ok(new PhotoReceipt(entryId));
            case PhotoStatus.UnknownEntry:
                return Refused(StatusCodes.Status404NotFound, rules.PhotoOfNothing);
            default:
                return Refused(StatusCodes.Status409Conflict, rules.PhotoTwice);
        }
    }

    private static async Task<Results<FileContentHttpResult, NotFound>> ShowAsync(
        Guid entryId, HttpResponse response, IDbContextFactory<EstateDb> databases, CancellationToken cancellation)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        if (await SetPhotos.FindAsync(db, entryId, cancellation) is not { } jpeg)
        {
            return TypedResults.NotFound();
        }

        // A photo of an entry never changes; it may show people, so no shared cache keeps it.
        response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return TypedResults.File(jpeg, "image/jpeg");
    }

    private static async Task<byte[]?> ReadAsync(HttpRequest request, CancellationToken cancellation)
    {
        // We count ourselves, so that the answer is in words; the server's own limit would cut the connection.
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = null;
        }

        using var kept = new MemoryStream();
        var part = new byte[81920];
        int read;
        while ((read = await request.Body.ReadAsync(part, cancellation)) > 0)
        {
            kept.Write(part, 0, read);
            if (kept.Length > LargestBytes)
            {
                return null;
            }
        }

        return kept.ToArray();
    }

    private static ProblemHttpResult Refused(int status, string why) => TypedResults.Problem(why, statusCode: status);
}

/// <summary>Proof that a photo is stored.</summary>
/// <param name="EntryId">The entry it belongs to.</param>
public sealed record PhotoReceipt(Guid EntryId);
