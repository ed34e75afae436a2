using System.Globalization;
using EstateWater.Data.Store;
using EstateWater.Web.Access;
using EstateWater.Web.Features.Accuracy;
using EstateWater.Web.Features.Changes;
using EstateWater.Web.Features.Demo;
using EstateWater.Web.Features.News;
using EstateWater.Web.Features.Preferences;
using EstateWater.Web.Features.Report;
using EstateWater.Web.Features.Rounds;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Features.SignIn;
using EstateWater.Web.Features.Taking;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.ResponseCompression;
using MudBlazor.Services;

namespace EstateWater.Web.Hosting;

/// <summary>Puts the web application together.</summary>
public static class WebHost
{
    /// <summary>The application, ready to prepare its data and start.</summary>
    public static WebApplication Build(ServeOptions options)
    {
        // Pages are English; numbers and dates must not follow the machine's settings.
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            // Named, because a test or another program may be the one that starts us, from any folder.
            ApplicationName = typeof(WebHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseUrls(options.ListenOn);
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning);
        // The key ring lies beside the database, protected by the same file permissions; its warning says only that.
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        ForwardedHeadersSetup.BelieveNobody(builder.Configuration);
        AddServices(builder.Services, options);

        var app = builder.Build();
        app.UseKnownProxies(options);
        MapEverything(app);
        return app;
    }

    private static void AddServices(IServiceCollection services, ServeOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton(new EstateClock(options.AsOf ?? (options.Demo ? DataPreparation.DemoInstant : null)));
        services.AddSingleton<TimeProvider>(provider => provider.GetRequiredService<EstateClock>());
        services.AddEstateDatabase(options.Database);
        services.AddSingleton<SnapshotBuilder>();
        services.AddSingleton(provider => new EstateSnapshots(provider.GetRequiredService<SnapshotBuilder>().BuildAsync, provider.GetRequiredService<EstateClock>()));
        services.AddSingleton(KeptLookBack.Beside(options.Database));
        services.AddSingleton<PastOutlooks>();
        services.AddHostedService<LookBackPace>();

        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddHttpContextAccessor();
        services.AddSignIn(options);
        services.AddCascadingValue(UnitsOfVisitor);
        services.AddScoped<AntiforgeryStateProvider, FormTokens>();
        services.AddDataProtection()
            .SetApplicationName("EstateWater")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(Path.GetDirectoryName(options.Database)!, "keys")));
        services.AddMudServices();
        services.AddScoped<SetsQuery>();
        services.AddScoped<WeekPlanner>();
        services.AddScoped<ChangesQuery>();
        services.AddScoped<ReportQuery>();
        services.AddScoped<EstateRounds>();
        services.AddScoped<ReadingsQuery>();
        services.AddResponseCompression(compression =>
        {
            compression.EnableForHttps = true;
            compression.Providers.Add<BrotliCompressionProvider>();
            compression.Providers.Add<GzipCompressionProvider>();
        });
        services.AddOutputCache(cache => cache.AddPolicy(SnapshotCachePolicy.Name, new SnapshotCachePolicy()));
    }

    private static UnitChoice UnitsOfVisitor(IServiceProvider provider)
    {
        var visitor = provider.GetRequiredService<IHttpContextAccessor>().HttpContext;
        return ReaderPreferences.Of(visitor).UnitsFor(provider.GetRequiredService<EstateSnapshots>().Settled, FieldPages.ReadIn(visitor));
    }

    // Pages name their policy; the live connection, which is the framework's, gets one here.
    private static void NeedSignIn(EndpointBuilder endpoint)
    {
        if (!endpoint.Metadata.Any(data => data is IAuthorizeData or IAllowAnonymous))
        {
            endpoint.Metadata.Add(new AuthorizeAttribute(Policies.SignedIn));
        }
    }

    private static void MapEverything(WebApplication app)
    {
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.UseSecurityHeaders();
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseRateLimiter();

        // The cache stands behind the sign-in, and before compression: what it keeps is compressed already.
        app.UseOutputCache();
        app.UseResponseCompression();
        app.UseAntiforgery();
        app.UseFieldWorker();
        app.MapStaticAssets().AllowAnonymous();
        app.MapNews();
        app.MapLookBack();
        app.MapConfirmations();
        app.MapPhotos();
        app.MapReadings();
        app.MapRounds();
        app.MapChanges();
        app.MapPasskeys();
        app.MapDemo();
        app.MapPreferences();
        app.MapRazorComponents<App>()
            .AddInteractiveServerRenderMode(render => render.ContentSecurityFrameAncestorsPolicy = null) // sent by UseSecurityHeaders
            .Add(NeedSignIn);
    }
}
