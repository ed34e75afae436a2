using System.Security.Claims;
using EstateWater.Data.Model;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Access;

/// <summary>What a signed-in visitor carries: who they are, what they do, and a stamp that changes when they are signed out everywhere.</summary>
public static class PersonPrincipal
{
    /// <summary>The claim of the stamp.</summary>
    public const string StampClaim = "stamp";

    // As much as the store keeps of who did something.
    private const int LongestActor = 100;

    /// <summary>The visitor's role; null for nobody.</summary>
    public static PersonRole? Role(this ClaimsPrincipal user) =>
        user.Identity is { IsAuthenticated: true } && Enum.TryParse<PersonRole>(user.FindFirstValue(ClaimTypes.Role), out var role) ? role : null;

    /// <summary>The name under which they act; null for nobody and in the demo, where whoever acts types a name.</summary>
    public static string? PersonName(this ClaimsPrincipal user) => user.FindFirstValue(ClaimTypes.Name);

    /// <summary>The person's number in the store; null for nobody and in the demo.</summary>
    public static string? PersonId(this ClaimsPrincipal user) => user.FindFirstValue(ClaimTypes.NameIdentifier);

    /// <summary>The name that stands under what a visitor does: their own; in the demo the one they typed.</summary>
    /// <param name="user">Who does it.</param>
    /// <param name="typed">Who did it, as an entry says: another than whoever signed in when a phone went from hand to hand.</param>
    public static string ActsAs(this ClaimsPrincipal user, string? typed)
    {
        var (own, said) = (user.PersonName(), (typed ?? "").Trim());
        return own is null ? said : said.Length == 0 || said == own ? own : Short($"{own} for {said}");
    }

    private static string Short(string name) => name.Length <= LongestActor ? name : name[..LongestActor];

    /// <summary>Makes it when someone signs in.</summary>
    internal sealed class Factory : IUserClaimsPrincipalFactory<Person>
    {
        /// <inheritdoc/>
        public Task<ClaimsPrincipal> CreateAsync(Person user) => Task.FromResult(new ClaimsPrincipal(new ClaimsIdentity(
            [
                new Claim(ClaimTypes.NameIdentifier, user.Id),
                new Claim(ClaimTypes.Name, user.UserName!),
                new Claim(ClaimTypes.Role, user.Role.ToString()),
                new Claim(StampClaim, user.SecurityStamp!),
            ],
            IdentityConstants.ApplicationScheme)));
    }
}
