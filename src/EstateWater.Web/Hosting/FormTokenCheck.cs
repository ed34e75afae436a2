using Microsoft.AspNetCore.Antiforgery;

namespace EstateWater.Web.Hosting;

/// <summary>Lets a form's post through when it carries the token of one of our pages.</summary>
internal static class FormTokenCheck
{
    /// <summary>Asks for the token. It stands in place of the framework's own check, which answers with an error page that would read the form again.</summary>
    /// <param name="endpoint">Where the form is posted.</param>
    /// <param name="otherwise">What whoever sent none is told to do.</param>
    public static RouteHandlerBuilder RequireFormToken(this RouteHandlerBuilder endpoint, string otherwise) => endpoint.RequireFormToken(_ => otherwise);

    /// <summary>The same where the words depend on who asks.</summary>
    /// <param name="endpoint">Where the form is posted.</param>
    /// <param name="otherwise">What whoever sent none is told to do, in their language.</param>
    public static RouteHandlerBuilder RequireFormToken(this RouteHandlerBuilder endpoint, Func<HttpContext, string> otherwise) => endpoint
        .DisableAntiforgery()
        .AddEndpointFilter(async (invocation, next) =>
        {
            var context = invocation.HttpContext;
            return await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context)
                ? await next(invocation)
                : TypedResults.Problem(otherwise(context), statusCode: StatusCodes.Status400BadRequest);
        });
}
