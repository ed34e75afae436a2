using System.Globalization;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace EstateWater.Web.Features.Rounds;

/// <summary>Takes the manager's changes of a round.</summary>
public static class RoundEndpoint
{
    /// <summary>Where the forms of the round are posted.</summary>
    public const string Path = "/readings/round/change";

    /// <summary>Where the round is shown.</summary>
    public const string Href = "/readings/round";

    /// <summary>Adds it.</summary>
    public static void MapRounds(this IEndpointRouteBuilder routes) => routes.MapPost(Path, ChangeAsync).RequireFormToken(context => WordsOf(context).OpenAgain).RequireAuthorization(Policies.Plan);

    private static async Task<Results<RedirectHttpResult, ProblemHttpResult>> ChangeAsync(
        [FromForm] string? date,
        [FromForm] string? add,
        [FromForm] string? drop,
        [FromForm] string? forget,
        [FromForm] string? by,
        [FromForm] string? walk,
        [FromForm] string? leaf,
        [FromForm] string? block,
        [FromForm] string? precision,
        HttpContext context,
        EstateRounds rounds,
        CancellationToken cancellation)
    {
        var words = WordsOf(context);
        if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return TypedResults.Problem(words.OpenAgain, statusCode: StatusCodes.Status400BadRequest);
        }

        var isSettings = walk is not null || leaf is not null || block is not null || precision is not null;
        var text = new RoundSettingsText(walk, leaf, block, precision, UnitsOf(context));
        if (isSettings && text.Mistakes(words).Count > 0)
        {
            // What was typed goes back in the address, so that the page can show it again with the rules.
            return TypedResults.LocalRedirect(QueryString.Create(
            [
                KeyValuePair.Create("walk", walk), KeyValuePair.Create("leaf", leaf), KeyValuePair.Create("block", block), KeyValuePair.Create("precision", precision),
            ]).Add("settings", "wrong").ToUriComponent().Insert(0, Href));
        }

        var change = new RoundChange { Add = Given(add), Drop = Given(drop), Forget = forget is not null, Settings = isSettings ? text.ToSettings() : null };
        return await rounds.ChangeAsync(day, change, context.User.ActsAs(by) is { Length: > 0 } who ? who : null, cancellation)
            ? TypedResults.LocalRedirect(Href)
            : TypedResults.Problem(words.NoRound, statusCode: StatusCodes.Status404NotFound);
    }

    private static RoundWords WordsOf(HttpContext context) => new(FieldLanguages.Of(context), UnitsOf(context));

    private static UnitChoice UnitsOf(HttpContext context) =>
        ReaderPreferences.Of(context).UnitsFor(context.RequestServices.GetRequiredService<EstateSnapshots>().Settled, FieldLanguages.Of(context));

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
