using EstateWater.Web.Access;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.State;
using Microsoft.AspNetCore.OutputCaching;

namespace EstateWater.Web.Hosting;

/// <summary>Keeps the answer of a page without parameters, one for each role, as long as the snapshot it shows is the present one, and never longer than a minute, because it says how old things are.</summary>
public sealed class SnapshotCachePolicy : IOutputCachePolicy
{
    /// <summary>Name for <c>[OutputCache(PolicyName = …)]</c>.</summary>
    public const string Name = "snapshot";

    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    /// <inheritdoc/>
    public async ValueTask CacheRequestAsync(OutputCacheContext context, CancellationToken cancellation)
    {
        var request = context.HttpContext.Request;
        var cacheable = HttpMethods.IsGet(request.Method);
        context.EnableOutputCaching = cacheable;
        context.AllowCacheLookup = cacheable;
        context.AllowCacheStorage = cacheable;
        context.AllowLocking = true;
        context.ResponseExpirationTimeSpan = Longest;
        context.CacheVaryByRules.HeaderNames = "Accept-Encoding";

        // Each role sees its own links; beyond that a kept page names nobody.
        context.CacheVaryByRules.VaryByValues["role"] = context.HttpContext.User.Role()?.ToString() ?? "";

        var snapshots = context.HttpContext.RequestServices.GetRequiredService<EstateSnapshots>();
        var snapshot = await snapshots.GetAsync(cancellation);
        context.CacheVaryByRules.VaryByValues["snapshot"] = snapshot.Version.ToString(System.Globalization.CultureInfo.InvariantCulture);

        // As it was understood, not as it was sent: a visitor's mangled cookie makes no answer of its own.
        var preferences = ReaderPreferences.Of(context.HttpContext);
        context.CacheVaryByRules.VaryByValues["preferences"] = (preferences with { Units = preferences.UnitsFor(snapshot) }).Key;
    }

    /// <inheritdoc/>
    public ValueTask ServeFromCacheAsync(OutputCacheContext context, CancellationToken cancellation) => ValueTask.CompletedTask;

    /// <inheritdoc/>
    public ValueTask ServeResponseAsync(OutputCacheContext context, CancellationToken cancellation)
    {
        var response = context.HttpContext.Response;
        // An answer that is not whole, or that belongs to one visitor, is not kept.
        context.AllowCacheStorage &= response.StatusCode == StatusCodes.Status200OK && response.Headers.SetCookie.Count == 0;
        return ValueTask.CompletedTask;
    }
}
