using EstateWater.Data.Model;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Access;

/// <summary>Lets people in, by password or by passkey.</summary>
/// <param name="people">Who may come in.</param>
/// <param name="signIn">Checks and gives the cookie.</param>
/// <param name="clock">Says when.</param>
public sealed class Door(UserManager<Person> people, SignInManager<Person> signIn, SessionClock clock)
{
    // Of no one's password: an unknown name must take as long to refuse as a known one.
    private static readonly string NobodysHash = new PasswordHasher<Person>().HashPassword(null!, OneTimeSecret.NewLinkPart());

    /// <summary>Signs in by name and password. Gives null, without a reason, when that cannot be.</summary>
    /// <param name="name">As typed.</param>
    /// <param name="password">As typed.</param>
    /// <param name="stay">Whether the phone or computer stays signed in after the browser was closed.</param>
    public async Task<Person?> ByPasswordAsync(string name, string password, bool stay)
    {
        if (await people.FindByNameAsync(PersonName.Clean(name)) is not { } person)
        {
            people.PasswordHasher.VerifyHashedPassword(null!, NobodysHash, password);
            return null;
        }

        // Counts failures, and after many refuses for a while whatever is typed.
        var checkedPassword = await signIn.CheckPasswordSignInAsync(person, password, lockoutOnFailure: true);
        return checkedPassword.Succeeded && await EnterAsync(person, stay) ? person : null;
    }

    /// <summary>Signs in by the answer of a passkey. Gives null when that cannot be.</summary>
    /// <remarks>Also for someone whose password others have tried too often: so nobody can be kept out by guessing at their name.</remarks>
    public async Task<Person?> ByPasskeyAsync(string credentialJson)
    {
        PasskeyAssertionResult<Person> answer;
        try
        {
            answer = await signIn.PerformPasskeyAssertionAsync(credentialJson);
        }
        catch (InvalidOperationException)
        {
            return null; // Nothing was asked of a passkey in this browser, or too long ago.
        }

        return answer.Succeeded
            && (await people.AddOrUpdatePasskeyAsync(answer.User, answer.Passkey)).Succeeded
            && await EnterAsync(answer.User, stay: true) ? answer.User : null;
    }

    /// <summary>Lets a person in who has shown who they are; not one who is locked out.</summary>
    public async Task<bool> EnterAsync(Person person, bool stay)
    {
        ArgumentNullException.ThrowIfNull(person);
        if (person.LockedAt is not null)
        {
            return false;
        }

        person.LastSignInAt = clock.Now;
        await people.UpdateAsync(person);
        await signIn.SignInAsync(person, isPersistent: stay);
        OwnPreferences.Bring(person, signIn.Context);
        return true;
    }
}
