using EstateWater.Data.Store;
using EstateWater.Data.Store.Taken;
using EstateWater.Web.Access;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Taking;

/// <summary>Takes what technicians read in the rows. The phone clears an entry only on the receipt that names its id.</summary>
public static class ReadingEndpoint
{
    /// <summary>Where entries are posted.</summary>
    public const string Path = "/api/readings";

    /// <summary>Adds it.</summary>
    public static void MapReadings(this IEndpointRouteBuilder routes) => routes.MapPost(Path, TakeAsync).RequireAuthorization(Policies.Readings).OnlyFromOwnPages("Entries");

    private static async Task<Results<Created<ReadingReceipt>, Ok<ReadingReceipt>, ValidationProblem, ProblemHttpResult>> TakeAsync(
        ReadingMessage message,
        HttpRequest request,
        IDbContextFactory<EstateDb> databases,
        EstateSnapshots snapshots,
        TimeProvider clock,
        CancellationToken cancellation)
    {
        var user = request.HttpContext.User;
        message = string.IsNullOrWhiteSpace(message.TakenBy) ? message with { TakenBy = user.PersonName() } : message;
        if (message.Mistakes(new ReadingRules(FieldLanguages.Of(request.HttpContext), UnitsOf(request, snapshots))) is { Count: > 0 } mistakes)
        {
            return TypedResults.ValidationProblem(mistakes, detail: string.Join(" ", mistakes.Values.SelectMany(rules => rules).Distinct()));
        }

        await using var db = await databases.CreateDbContextAsync(cancellation);
        var result = await TakenEntries.TakeAsync(db, message.ToEntry() with { TakenBy = user.ActsAs(message.TakenBy) }, clock.GetUtcNow(), cancellation);
        switch (result.Status)
        {
            case TakenStatus.Stored:
                snapshots.Invalidate(News(message, result.Entry!.TakenBy, result.Entry.BlockCode));
                return TypedResults.Created((string?)null, ReadingReceipt.Of(result.Entry!));
            case TakenStatus.StoredBefore:
                return TypedResults.Ok(ReadingReceipt.Of(result.Entry!));
            case TakenStatus.UnknownBlock:
                return Refused(StatusCodes.Status404NotFound, Words(request, snapshots).Refusal(result));
            case TakenStatus.WrongTime:
                return Refused(StatusCodes.Status422UnprocessableEntity, Words(request, snapshots).Refusal(result));
            default:
                return Refused(StatusCodes.Status409Conflict, Words(request, snapshots).Refusal(result));
        }
    }

    private static string News(ReadingMessage message, string by, string block) => $"{by} " + (message.Kind, message.Replaces) switch
    {
        ("withdrawal", _) => $"withdrew an entry of {block}.",
        (_, not null) => $"corrected an entry of {block}.",
        _ => $"read {block}.",
    };

    private static ReadingsWords Words(HttpRequest request, EstateSnapshots snapshots) => new(FieldLanguages.Of(request.HttpContext), UnitsOf(request, snapshots));

    // No sender waits for a snapshot: until the first is made the estate's usual units are not known.
    private static UnitChoice UnitsOf(HttpRequest request, EstateSnapshots snapshots) =>
        ReaderPreferences.Of(request.HttpContext).UnitsFor(snapshots.Settled, FieldLanguages.Of(request.HttpContext));

    private static ProblemHttpResult Refused(int status, string why) => TypedResults.Problem(why, statusCode: status);
}
