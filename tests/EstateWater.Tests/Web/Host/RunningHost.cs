using EstateWater.Data.Model;
using EstateWater.Data.Store;
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
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        Http = new HttpClient { BaseAddress = new Uri(address) };
    }

    public WebApplication App { get; }

    public HttpClient Http { get; }

    /// <param name="contents">What the database holds; nothing when null.</param>
    public static async Task<RunningHost> StartAsync(EstateContents? contents)
    {
        var folder = Directory.CreateTempSubdirectory("estatewater-");
        var options = new ServeOptions { DatabaseFile = Path.Combine(folder.FullName, "test.db"), AsOf = SmallEstate.AsOf, Urls = "http://127.0.0.1:0" };
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
        Http.Dispose();
        await App.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }
}
