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

    private static async Task<RedirectHttpResult> KeepAsync(HttpContext context, EstateSnapshots snapshots, CancellationToken cancellation)
    {
        var form = await context.Request.ReadFormAsync(cancellation);
        var before = ReaderPreferences.Of(context).UnitsFor(snapshots.Settled);
        new ReaderPreferences(Chosen(form, before), Appearances.Parse(form["look"])).Keep(context);
        FieldLanguages.Keep(context, form["language"]);
        return TypedResults.LocalRedirect(KeptHref);
    }

    /// <summary>The units of a form: a preset's button takes all of them, else each quantity has its own.</summary>
    private static UnitChoice Chosen(IFormCollection form, UnitChoice before) => form["preset"].ToString() switch
    {
        "metric" => UnitChoice.Metric with { Numbers = before.Numbers == NumberStyle.American ? NumberStyle.Point : before.Numbers },
        "us" => UnitChoice.Us,
        _ => UnitChoice.Questions.Aggregate(
            before with { Numbers = NumberStyle.All.FirstOrDefault(style => style.Key == form["numbers"]) ?? before.Numbers },
            (choice, question) => question.Answered(choice, form[question.Name])),
    };
}
