using EstateWater.Web.Access;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Accuracy;

/// <summary>Tells an open page how far holding past outlooks against the readings has come.</summary>
public static class LookBackEndpoint
{
    /// <summary>Serves the progress at <c>/accuracy/progress</c>; asking for it begins nothing.</summary>
    public static void MapLookBack(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/accuracy/progress", (PastOutlooks past) => TypedResults.Ok(LookBackProgress.Of(past.Now))).RequireAuthorization(Policies.Records);
}

/// <summary>Progress as it travels.</summary>
/// <param name="Working">Whether the work goes on.</param>
/// <param name="Words">How far it is, for people.</param>
public sealed record LookBackProgress(bool Working, string Words)
{
    /// <summary>Of one moment.</summary>
    public static LookBackProgress Of(LookBack now) => new(now.IsWorking, AccuracyWords.Progress(now));
}
