using Microsoft.AspNetCore.HttpOverrides;

namespace EstateWater.Web.Hosting;

/// <summary>Whose word is believed on where a request came from: that of the proxies which were named, and nobody else's.</summary>
internal static class ForwardedHeadersSetup
{
    /// <summary>Puts the framework's own switch out, which by one variable of the environment believes everybody.</summary>
    public static void BelieveNobody(IConfiguration configuration) => configuration["ForwardedHeaders_Enabled"] = bool.FalseString;

    /// <summary>Believes the proxies that were named. It comes before all else, so that all else sees the phone and not the proxy.</summary>
    public static void UseKnownProxies(this IApplicationBuilder app, ServeOptions options)
    {
        if (options is { Demo: true } or { Proxies: [] })
        {
            return;
        }

        var believed = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
            ForwardLimit = null, // From proxy to proxy, as long as each is one of the named.
        };
        believed.KnownIPNetworks.Clear(); // Else this whole computer is believed.
        believed.KnownProxies.Clear();
        foreach (var proxy in options.Proxies)
        {
            believed.KnownProxies.Add(proxy);
        }

        app.UseForwardedHeaders(believed);
    }
}
