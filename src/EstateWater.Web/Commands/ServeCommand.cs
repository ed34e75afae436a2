using System.CommandLine;
using System.CommandLine.Parsing;
using System.Net;
using EstateWater.Web.Access;
using EstateWater.Web.Hosting;
using EstateWater.Web.State;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace EstateWater.Web.Commands;

/// <summary>Serves the pages until it is stopped.</summary>
public static class ServeCommand
{
    /// <summary>The word on the command line.</summary>
    public const string Name = "serve";

    private static readonly Option<bool> Demo = new("--demo")
    {
        Description = "Show the demo estate: its own database, a fixed clock, this computer only.",
    };

    private static readonly Option<string?> Database = new("--database")
    {
        Description = $"The database file ({ServeOptions.DefaultDatabase} when not given).",
        HelpName = "FILE",
    };

    private static readonly Option<string?> Data = new("--data")
    {
        Description = "An estate folder to import first.",
        HelpName = "FOLDER",
    };

    private static readonly Option<DateTimeOffset?> AsOf = new("--as-of")
    {
        Description = "Fix the clock at this instant, for example 2025-01-22T06:00:00+02:00.",
        HelpName = "INSTANT",
        CustomParser = ParseInstant,
    };

    private static readonly Option<string?> Urls = new("--urls")
    {
        Description = $"Addresses to listen on ({ServeOptions.DefaultUrls} when not given).",
        HelpName = "URLS",
    };

    private static readonly Option<IReadOnlyList<IPAddress>> Proxies = new("--proxy")
    {
        Description = "The address of a proxy, as this computer sees it, whose X-Forwarded-For and X-Forwarded-Proto are believed; may be given again.",
        HelpName = "ADDRESS",
        CustomParser = ParseProxies,
    };

    /// <summary>The command with its options.</summary>
    public static Command Create()
    {
        var command = new Command(Name, "Serve the pages (the default).") { Demo, Database, Data, AsOf, Urls, Proxies };
        command.SetAction((parsed, cancellation) => Serve(
            new ServeOptions
            {
                Demo = parsed.GetValue(Demo),
                DatabaseFile = parsed.GetValue(Database),
                DataFolder = parsed.GetValue(Data),
                AsOf = parsed.GetValue(AsOf),
                Urls = parsed.GetValue(Urls),
                Proxies = parsed.GetValue(Proxies) ?? [],
            },
            cancellation));
        return command;
    }

    private static async Task<int> Serve(ServeOptions options, CancellationToken cancellation)
    {
        if (options.Demo && !options.IsLocal)
        {
            await Console.Error.WriteLineAsync($"--urls: {options.ListenOn} can be reached from other computers; the demo serves this one only, for example {ServeOptions.DefaultUrls}.");
            return ExitCodes.BadInput;
        }

        if (options is { Demo: true, Proxies.Count: > 0 })
        {
            await Console.Error.WriteLineAsync("--proxy: the demo serves this computer only, and nobody through a proxy.");
            return ExitCodes.BadInput;
        }

        if (await DataPreparation.RunAsync(options, Console.Error, cancellation) is var exitCode and not ExitCodes.Done)
        {
            return exitCode;
        }

        await using var app = WebHost.Build(options);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (IOException failure) when (failure.InnerException is AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"{failure.Message.TrimEnd('.')}. Stop the other program, or name another address with --urls, for example --urls http://127.0.0.1:5081.");
            return ExitCodes.BadInput;
        }

        // The first plan is made while the browser opens, not while it waits.
        _ = app.Services.GetRequiredService<EstateSnapshots>().GetAsync(cancellation);
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Select(ServeOptions.ToOpen).ToList();
        await Console.Out.WriteLineAsync($"EstateWater is ready. Open {string.Join(" or ", addresses)} (stop with Ctrl+C).");
        await SayFirstStartAsync(app, addresses[0], cancellation);
        await app.WaitForShutdownAsync(cancellation);
        return 0;
    }

    // The code stands at the console alone: whoever reads it started the program, or may read what it prints.
    private static async Task SayFirstStartAsync(WebApplication app, string address, CancellationToken cancellation)
    {
        if (app.Services.GetRequiredService<ServeOptions>().Demo)
        {
            return;
        }

        await using var scope = app.Services.CreateAsyncScope();
        if (await scope.ServiceProvider.GetRequiredService<Newcomers>().IsNobodyHereAsync(cancellation))
        {
            var code = app.Services.GetRequiredService<FirstStart>().Begin();
            await Console.Out.WriteLineAsync($"Nobody can sign in yet. Make the first manager at {address}{SignInPaths.Start} with the code {code} (works once, for {FirstStart.GoodFor.TotalHours:0} hour).");
        }
    }

    private static DateTimeOffset? ParseInstant(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (Instants.TryRead(text, out var instant))
        {
            return instant;
        }

        result.AddError(Instants.Refusal(text));
        return null;
    }

    private static List<IPAddress> ParseProxies(ArgumentResult result)
    {
        var proxies = new List<IPAddress>();
        foreach (var text in result.Tokens.Select(token => token.Value))
        {
            if (IPAddress.TryParse(text, out var proxy))
            {
                proxies.Add(proxy);
            }
            else
            {
                result.AddError($"--proxy: '{text}' is no address; write it like 127.0.0.1 or ::1");
            }
        }

        return proxies;
    }
}
