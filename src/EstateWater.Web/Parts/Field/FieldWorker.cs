namespace EstateWater.Web.Parts.Field;

/// <summary>The worker that gives field pages from the phone when there is no signal.</summary>
public static class FieldWorker
{
    /// <summary>Where its script lies.</summary>
    public const string Path = "/field/sw.js";

    /// <summary>Lets the script, which lies in a folder of its own, serve the pages beside it.</summary>
    public static void UseFieldWorker(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (context.Request.Path == Path)
        {
            context.Response.Headers["Service-Worker-Allowed"] = "/";
        }

        return next(context);
    });
}
