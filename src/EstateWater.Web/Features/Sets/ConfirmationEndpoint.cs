using EstateWater.Data.Store;
using EstateWater.Web.Access;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Features.Sets;

/// <summary>Takes what irrigators say of their sets. The phone clears an entry only on the receipt that names its id.</summary>
public static class ConfirmationEndpoint
{
    /// <summary>Where entries are posted.</summary>
    public const string Path = "/api/confirmations";

    /// <summary>Adds it.</summary>
    public static void MapConfirmations(this IEndpointRouteBuilder routes) => routes.MapPost(Path, TakeAsync).RequireAuthorization(Policies.Sets).OnlyFromOwnPages("Entries");

    private static async Task<Results<Created<ConfirmationReceipt>, Ok<ConfirmationReceipt>, ValidationProblem, ProblemHttpResult>> TakeAsync(
        ConfirmationMessage message,
        HttpRequest request,
        IDbContextFactory<EstateDb> databases,
        EstateSnapshots snapshots,
        TimeProvider clock,
        CancellationToken cancellation)
    {
        var user = request.HttpContext.User;
        message = string.IsNullOrWhiteSpace(message.ConfirmedBy) ? message with { ConfirmedBy = user.PersonName() } : message;
        var language = FieldLanguages.Of(request.HttpContext);
        var units = ReaderPreferences.Of(request.HttpContext).UnitsFor(snapshots.Settled, language);
        if (message.Mistakes(new ConfirmationRules(language, units)) is { Count: > 0 } mistakes)
        {
            return TypedResults.ValidationProblem(mistakes, detail: string.Join(" ", mistakes.Values.SelectMany(rules => rules)));
        }

        await using var db = await databases.CreateDbContextAsync(cancellation);
        var entry = message.ToEntry() with { ConfirmedBy = user.ActsAs(message.ConfirmedBy) };
        var result = await Confirmations.ConfirmAsync(db, entry, clock.GetUtcNow(), cancellation);
        var words = new SetsWords(language, units);
        switch (result.Status)
        {
            case ConfirmationStatus.Stored:
                snapshots.Invalidate($"{entry.ConfirmedBy} {(message.Replaces is null ? "confirmed a set" : "corrected a set")}.");
                return TypedResults.Created((string?)null, ConfirmationReceipt.Of(result.Receipt!));
            case ConfirmationStatus.StoredBefore:
                return TypedResults.Ok(ConfirmationReceipt.Of(result.Receipt!));
            case ConfirmationStatus.UnknownSet:
                return Refused(StatusCodes.Status404NotFound, words.Refusal(result));
            case ConfirmationStatus.NotYet:
                return Refused(StatusCodes.Status422UnprocessableEntity, words.Refusal(result));
            default:
                return Refused(StatusCodes.Status409Conflict, words.Refusal(result));
        }
    }

    private static ProblemHttpResult Refused(int status, string why) => TypedResults.Problem(why, statusCode: status);
}
