using System.Security.Claims;
using EstateWater.Web.Access;
using EstateWater.Web.Features.Rounds;

namespace EstateWater.Web.Layout;

/// <summary>A page in the header of every page, for whoever may open it.</summary>
/// <param name="Href">Where.</param>
/// <param name="Words">What it is called.</param>
/// <param name="Policy">Who may open it.</param>
public sealed record PageLink(string Href, string Words, string Policy)
{
    /// <summary>Whether it stands behind “More”: looked at now and then, not in a day’s work.</summary>
    public bool IsSeldom { get; init; }

    /// <summary>Whether pages under it have links of their own, so that it is not marked on those.</summary>
    public bool IsWhole => All.Any(other => other != this && other.Href.StartsWith(Href, StringComparison.Ordinal));

    /// <summary>All of them, in order.</summary>
    public static IReadOnlyList<PageLink> All { get; } =
    [
        new("/owner", "Owner", Policies.Owner),
        new("/", "Estate", Policies.Estate),
        new("/week", "Week", Policies.Week),
        new("/report", "Report", Policies.Records),
        new("/sets", "Tonight’s sets", Policies.Sets),
        new("/readings", "Readings", Policies.Readings),
        new(RoundEndpoint.Href, "Round", Policies.Readings),
        new("/changes", "Changes", Policies.Records) { IsSeldom = true },
        new("/accuracy", "Past outlooks", Policies.Records) { IsSeldom = true },
        new("/methods", "Methods", Policies.Estate) { IsSeldom = true },
        new("/people", "People", Policies.People) { IsSeldom = true },
        new("/preferences", "Preferences", Policies.SignedIn) { IsSeldom = true },
    ];

    /// <summary>Those that a visitor may open.</summary>
    public static IEnumerable<PageLink> For(ClaimsPrincipal? user) => All.Where(link => user is not null && Policies.Allows(link.Policy, user));
}
