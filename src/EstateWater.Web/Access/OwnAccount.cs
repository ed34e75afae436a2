using System.Security.Claims;
using EstateWater.Data.Model;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.WebUtilities;

namespace EstateWater.Web.Access;

/// <summary>What people do with their own sign-in: another password, passkeys, signing out.</summary>
/// <param name="people">Their accounts.</param>
/// <param name="signIn">Checks and gives cookies.</param>
/// <param name="sessions">Hears what no longer holds.</param>
public sealed class OwnAccount(UserManager<Person> people, SignInManager<Person> signIn, Sessions sessions)
{
    /// <summary>More than anyone has phones and computers.</summary>
    public const int MostPasskeys = 20;

    /// <summary>The code of the mistake: this is no passkey that can be kept.</summary>
    public const string PasskeyRefused = "PasskeyRefused";

    /// <summary>Longest name of a passkey.</summary>
    public const int LongestPasskeyName = 60;

    /// <summary>Their passkeys, the oldest first.</summary>
    public async Task<IReadOnlyList<UserPasskeyInfo>> PasskeysAsync(ClaimsPrincipal user) =>
        [.. (await people.GetPasskeysAsync(await SelfAsync(user))).OrderBy(key => key.CreatedAt)];

    /// <summary>Keeps a passkey that was just made.</summary>
    public async Task<IdentityResult> AddPasskeyAsync(ClaimsPrincipal user, string credentialJson, string name)
    {
        var self = await SelfAsync(user);
        PasskeyAttestationResult made;
        try
        {
            made = await signIn.PerformPasskeyAttestationAsync(credentialJson);
        }
        catch (InvalidOperationException)
        {
            return Mistake(PasskeyRefused); // None was asked for in this browser, or too long ago.
        }

        if (!made.Succeeded || made.UserEntity.Id != self.Id || (await people.GetPasskeysAsync(self)).Count >= MostPasskeys)
        {
            return Mistake(PasskeyRefused);
        }

        var cleaned = PersonName.Clean(name);
        made.Passkey.Name = cleaned.Length > LongestPasskeyName ? cleaned[..LongestPasskeyName] : cleaned;
        return await people.AddOrUpdatePasskeyAsync(self, made.Passkey);
    }

    /// <summary>Takes a passkey out.</summary>
    /// <param name="user">Whose.</param>
    /// <param name="credentialId">Its number as the page shows it.</param>
    public async Task RemovePasskeyAsync(ClaimsPrincipal user, string credentialId)
    {
        var self = await SelfAsync(user);
        if ((await people.GetPasskeysAsync(self)).FirstOrDefault(key => Id(key) == credentialId) is { } key)
        {
            await people.RemovePasskeyAsync(self, key.CredentialId);
        }
    }

    /// <summary>A passkey's number as a page shows it.</summary>
    public static string Id(UserPasskeyInfo passkey)
    {
        ArgumentNullException.ThrowIfNull(passkey);
        return WebEncoders.Base64UrlEncode(passkey.CredentialId);
    }

    /// <summary>Sets another password. Every other phone and computer is signed out.</summary>
    public async Task<IdentityResult> ChangePasswordAsync(ClaimsPrincipal user, string current, string next)
    {
        var self = await SelfAsync(user);
        var result = await people.ChangePasswordAsync(self, current, next);
        if (result.Succeeded)
        {
            sessions.Forget(self.Id);
            await signIn.RefreshSignInAsync(self);
        }

        return result;
    }

    /// <summary>Signs out here.</summary>
    public Task SignOutAsync() => signIn.SignOutAsync();

    /// <summary>Signs out on every phone and computer.</summary>
    public async Task SignOutEverywhereAsync(ClaimsPrincipal user)
    {
        var self = await SelfAsync(user);
        await people.UpdateSecurityStampAsync(self);
        sessions.Forget(self.Id);
        await signIn.SignOutAsync();
    }

    private static IdentityResult Mistake(string code) => IdentityResult.Failed(new IdentityError { Code = code, Description = code });

    private async Task<Person> SelfAsync(ClaimsPrincipal user) =>
        await people.FindByIdAsync(user.PersonId() ?? "") ?? throw new InvalidOperationException("Nobody is signed in.");
}
