using System.Security.Claims;
using EstateWater.Data.Model;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using Microsoft.AspNetCore.Identity;

namespace EstateWater.Web.Access;

/// <summary>What people chose about how pages speak to them is kept with them, and comes to every phone and computer on which they sign in.</summary>
/// <param name="people">Their accounts.</param>
public sealed class OwnPreferences(UserManager<Person> people)
{
    /// <summary>Keeps them with whoever is signed in; the demo's visitor is nobody, and has only the browser.</summary>
    /// <param name="user">Who chose.</param>
    /// <param name="chosen">Units, numbers and look.</param>
    /// <param name="language">The language's tag; null or a tag of none changes nothing.</param>
    public async Task KeepAsync(ClaimsPrincipal user, ReaderPreferences chosen, string? language)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        if (user.PersonId() is { } id && await people.FindByIdAsync(id) is { } self)
        {
            self.Preferences = chosen.Key;
            self.Language = FieldLanguages.Named(language)?.Tag() ?? self.Language;
            await people.UpdateAsync(self);
        }
    }

    /// <summary>Brings them to the browser with which someone signs in; who chose nothing finds what was chosen there.</summary>
    /// <param name="person">Who signs in.</param>
    /// <param name="context">The request, not yet answered.</param>
    public static void Bring(Person person, HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(person);
        if (person.Preferences is { } key)
        {
            ReaderPreferences.Parse(key).Keep(context);
        }

        FieldLanguages.Keep(context, person.Language);
    }
}
