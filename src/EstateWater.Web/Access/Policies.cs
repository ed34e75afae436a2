using System.Security.Claims;
using EstateWater.Data.Model;
using Microsoft.AspNetCore.Authorization;

namespace EstateWater.Web.Access;

/// <summary>Who may see and do what. Every page and every address of the program names one of these, or says that it needs no sign-in.</summary>
public static class Policies
{
    /// <summary>Whoever signed in: their own account, the live connection of a page.</summary>
    public const string SignedIn = "signed-in";

    /// <summary>The estate, its blocks and readings, how numbers are computed.</summary>
    public const string Estate = "estate";

    /// <summary>The owner's page.</summary>
    public const string Owner = "owner";

    /// <summary>Reads the plan of the week.</summary>
    public const string Week = "week";

    /// <summary>Changes and publishes the plan, takes changes back.</summary>
    public const string Plan = "plan";

    /// <summary>The week’s report, past outlooks, blocks side by side, the record of changes.</summary>
    public const string Records = "records";

    /// <summary>Tonight's sets, and saying what was done.</summary>
    public const string Sets = "sets";

    /// <summary>Photos that came with the sets.</summary>
    public const string Photos = "photos";

    /// <summary>Takes readings.</summary>
    public const string Readings = "readings";

    /// <summary>The list of people.</summary>
    public const string People = "people";

    private static readonly PersonRole[] Everyone = Enum.GetValues<PersonRole>();

    private static readonly Dictionary<string, PersonRole[]> Allowed = new()
    {
        [SignedIn] = Everyone,
        [Estate] = Everyone,
        [Owner] = [PersonRole.Owner, PersonRole.Manager],
        [Week] = [PersonRole.Owner, PersonRole.Manager],
        [Plan] = [PersonRole.Manager],
        [Records] = [PersonRole.Owner, PersonRole.Manager],
        [Sets] = [PersonRole.Irrigator, PersonRole.Manager],
        [Photos] = [PersonRole.Irrigator, PersonRole.Owner, PersonRole.Manager],
        [Readings] = [PersonRole.Technician, PersonRole.Manager],
        [People] = [PersonRole.Manager],
    };

    /// <summary>All names.</summary>
    public static IReadOnlyCollection<string> All => Allowed.Keys;

    /// <summary>Whether someone may, as they signed in.</summary>
    public static bool Allows(string policy, ClaimsPrincipal user) => user.Role() is { } role && Allowed[policy].Contains(role);

    /// <summary>Makes them known; what names none is for whoever signed in.</summary>
    internal static void AddTo(AuthorizationOptions authorization)
    {
        foreach (var (name, roles) in Allowed)
        {
            authorization.AddPolicy(name, policy => policy.RequireAuthenticatedUser().RequireRole(roles.Select(role => role.ToString())));
        }

        authorization.FallbackPolicy = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build();
    }
}
