using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Http.HttpResults;

namespace EstateWater.Web.Features.Preferences;

/// <summary>Takes what a person chose on the page of preferences.</summary>
public static class PreferencesEndpoint
{
    /// <summary>Where the form is posted.</summary>
    public const string Path = "/preferences/keep";

    /// <summary>Where the page says that the choice is kept.</summary>
    public const string KeptHref = "/preferences?kept=yes";

    /// <summary>Adds it.</summary>
    public static void MapPreferences(this IEndpointRouteBuilder routes) => routes.MapPost(Path, KeepAsync)
        .RequireFormToken("Open the page of preferences again and choose there.").RequireAuthorization(Policies.SignedIn);

    private static async Task<RedirectHttpResult> KeepAsync(HttpContext context, EstateSnapshots snapshots, OwnPreferences own, CancellationToken cancellation)
    {
        var form = await context.Request.ReadFormAsync(cancellation);
        var before = ReaderPreferences.Of(context);
        var chosen = Chosen(form, before, before.UnitsFor(snapshots.Settled));
        chosen.Keep(context);
        await own.KeepAsync(context.User, chosen, form["language"]);
        FieldLanguages.Keep(context, form["language"]);
        return TypedResults.LocalRedirect(KeptHref);
    }

    /// <summary>What a form says: a preset's button takes all units, else each quantity has its own.</summary>
    private static ReaderPreferences Chosen(IFormCollection form, ReaderPreferences before, UnitChoice shown)
    {
        var numbers = form.TryGetValue("numbers", out var style) ? NumberStyle.Of(style) : before.Numbers;
        var (units, withUnits) = form["preset"].ToString() switch
        {
            "metric" => (UnitChoice.Metric, shown.Numbers == NumberStyle.American ? NumberStyle.Point : numbers),
            "us" => (UnitChoice.Us, NumberStyle.American),
            _ => (UnitChoice.Questions.Aggregate(shown, (choice, question) => question.Answered(choice, form[question.Name])), numbers),
        };
        return new ReaderPreferences(units, Appearances.Parse(form["look"]), withUnits);
    }
}
