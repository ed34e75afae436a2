using System.Net;

namespace EstateWater.Web.Hosting;

/// <summary>How the pages are served.</summary>
public sealed record ServeOptions
{
    /// <summary>Where the data are kept when nothing else is said.</summary>
    public const string DefaultDatabase = "data/estate.db";

    /// <summary>Where the demo estate's data are kept.</summary>
    public const string DemoDatabase = "data/demo.db";

    /// <summary>Listens on this computer alone.</summary>
    public const string DefaultUrls = "http://127.0.0.1:5080";

    /// <summary>Whether the demo estate is shown.</summary>
    public bool Demo { get; init; }

    /// <summary>The database file; null for the default.</summary>
    public string? DatabaseFile { get; init; }

    /// <summary>An estate folder to import before serving.</summary>
    public string? DataFolder { get; init; }

    /// <summary>The instant at which the clock stands; null for the real time.</summary>
    public DateTimeOffset? AsOf { get; init; }

    /// <summary>The time by which sessions and invitations run out, whatever the estate's clock says.</summary>
    public TimeProvider SessionTime { get; init; } = TimeProvider.System;

    /// <summary>Addresses to listen on; null for the default.</summary>
    public string? Urls { get; init; }

    /// <summary>Proxies whose word is believed on who asks and whether by https; none believes nobody's. The demo believes none.</summary>
    public IReadOnlyList<IPAddress> Proxies { get; init; } = [];

    /// <summary>The addresses that are listened on.</summary>
    public string ListenOn => Urls ?? DefaultUrls;

    /// <summary>How an address that is listened on is opened on this computer: by name, because browsers keep no passkey for a number.</summary>
    public static string ToOpen(string listensOn) => listensOn.Replace("//127.0.0.1", "//localhost", StringComparison.Ordinal);

    /// <summary>Whether only this computer can reach the pages.</summary>
    public bool IsLocal => ListenOn.Split(';').All(url => Uri.TryCreate(url, UriKind.Absolute, out var address) && address.IsLoopback);

    /// <summary>The database that is used.</summary>
    public string Database => Path.GetFullPath(DatabaseFile ?? (Demo ? DemoDatabase : DefaultDatabase));
}
