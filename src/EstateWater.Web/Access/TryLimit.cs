using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;

namespace EstateWater.Web.Access;

/// <summary>How often one address may try a password, a code or a link.</summary>
internal static class TryLimit
{
    /// <summary>For <c>[EnableRateLimiting]</c>.</summary>
    public const string Name = "tries";

    /// <summary>More than all hands of an estate behind one address need in a minute.</summary>
    public const int TriesAMinute = 30;

    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    public static void Configure(RateLimiterOptions options)
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.OnRejected = async (context, cancellation) =>
        {
            context.HttpContext.Response.Headers.RetryAfter = "60";
            context.HttpContext.Response.ContentType = "text/plain; charset=utf-8";
            await context.HttpContext.Response.WriteAsync("Too many tries. Wait a minute, then try again.\nDemasiados intentos. Espere un minuto y pruebe otra vez.\n", cancellation);
        };

        // Looking at a page is no try. The address is that of the connection, or what a known proxy says of it: anyone can write a header.
        options.AddPolicy(Name, context => HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method)
            ? RateLimitPartition.GetNoLimiter("")
            : RateLimitPartition.GetFixedWindowLimiter(
                context.Connection.RemoteIpAddress?.ToString() ?? "",
                _ => new FixedWindowRateLimiterOptions { PermitLimit = TriesAMinute, Window = Minute }));
    }
}
