using System.Reflection;
using EstateWater.Web.Hosting;
using Microsoft.AspNetCore.Components;

namespace EstateWater.SystemTests.Journeys;

/// <summary>Every page that has an address, found in the program, so that a new one cannot be forgotten.</summary>
internal static class EveryPage
{
    // Addresses whose parts or query a page needs to show something. The block and the day are of the demo estate.
    private static readonly Dictionary<string, string> Samples = new()
    {
        ["/blocks/{Code}"] = "/blocks/B8",
        ["/blocks/{Code}/sets/{DayText}"] = "/blocks/B8/sets/2026-01-19",
        ["/compare"] = "/compare?blocks=A1,A2,A3",
    };

    /// <summary>An address of each page, and of the pages for the rows in their other language.</summary>
    public static IReadOnlyList<string> Paths { get; } =
    [
        .. typeof(WebHost).Assembly.GetTypes()
            .SelectMany(page => page.GetCustomAttributes<RouteAttribute>())
            .Select(route => PathOf(route.Template))
            .Order(StringComparer.Ordinal),
        "/sets?lang=es",
    ];

    /// <summary>Whether it is used outdoors.</summary>
    public static bool IsForTheRows(string path) => path.StartsWith("/sets", StringComparison.Ordinal);

    private static string PathOf(string template) =>
        Samples.GetValueOrDefault(template)
        ?? (template.Contains('{', StringComparison.Ordinal)
            ? throw new InvalidOperationException($"The page {template} has no sample address in {nameof(EveryPage)}: add one, so that it is looked at too.")
            : template);
}
