using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Host;

/// <summary>The program as it serves, on a database of its own and a free port.</summary>
internal sealed class RunningHost : IAsyncDisposable
{
    private readonly DirectoryInfo folder;

    private RunningHost(WebApplication app, DirectoryInfo folder)
    {
        (App, this.folder) = (app, folder);
        Address = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
        Manager = new Visitor(Address);
    }

    public WebApplication App { get; }

    public Uri Address { get; }

    /// <summary>The first manager, signed in where the host was not started without people.</summary>
    public Visitor Manager { get; }

    /// <summary>The manager's requests; redirects are followed.</summary>
    public HttpClient Http => Manager.Follows;

    /// <param name="contents">What the database holds; nothing when null.</param>
    public static async Task<RunningHost> StartAsync(EstateContents? contents)
    {
        var host = await StartEmptyAsync(contents);
        await host.Manager.StartAsync(host.App.Services.GetRequiredService<FirstStart>().Begin(), "Mara", Visitor.Password);
        return host;
    }

    /// <summary>As at the very first start: nobody can sign in.</summary>
    /// <param name="contents">What the database holds; nothing when null.</param>
    /// <param name="sessionTime">The time by which sessions and links run out; the real one when null.</param>
    /// <param name="like">How else it serves.</param>
    public static async Task<RunningHost> StartEmptyAsync(EstateContents? contents, TimeProvider? sessionTime = null, ServeOptions? like = null)
    {
        var folder = Directory.CreateTempSubdirectory("estatewater-");
        var options = (like ?? new ServeOptions()) with { DatabaseFile = Path.Combine(folder.FullName, "test.db"), AsOf = SmallEstate.AsOf, Urls = "http://127.0.0.1:0", SessionTime = sessionTime ?? TimeProvider.System };
        await using (var db = DatabaseSetup.Open(options.Database))
        {
            await DatabaseSetup.MigrateAsync(db);
            if (contents is not null)
            {
                await EstateStore.ImportAsync(db, contents);
            }
        }

        var app = WebHost.Build(options);
        await app.StartAsync();
        return new RunningHost(app, folder);
    }

    public async ValueTask DisposeAsync()
    {
        Manager.Dispose();
        await App.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }
}
