using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Parts.Preferences;

/// <summary>What a person has chosen about how pages speak to them. Kept in a cookie, and with whoever is signed in (<c>Access/OwnPreferences</c>).</summary>
/// <param name="Units">Units; null for what the estate usually shows.</param>
/// <param name="Look">Light or dark.</param>
/// <param name="Numbers">How numbers, days and times are written; null for what goes with the page's language.</param>
public sealed record ReaderPreferences(UnitChoice? Units, Appearance Look, NumberStyle? Numbers = null)
{
    /// <summary>Remembers the choice.</summary>
    public const string Cookie = "estate-water-preferences";

    private static readonly TimeSpan Remembered = TimeSpan.FromDays(365);

    /// <summary>Of someone who has chosen nothing.</summary>
    public static ReaderPreferences None { get; } = new(null, Appearance.System);

    /// <summary>The choice as one word: “system:bar.mm.m3.ha.c.en:es”; the last is empty while numbers follow the language.</summary>
    public string Key => $"{Look.Key()}:{Units?.Key}:{Numbers?.Key}";

    /// <summary>Reads <see cref="Key"/>; what is mangled counts as not chosen.</summary>
    public static ReaderPreferences Parse(string? key) => key?.Split(':') switch
    {
        // Kept before numbers could follow the language: they were chosen with the units.
        [var look, var units] => new(UnitChoice.Parse(units), Appearances.Parse(look), UnitChoice.Parse(units)?.Numbers),
        [var look, var units, var numbers] => new(UnitChoice.Parse(units), Appearances.Parse(look), NumberStyle.Of(numbers)),
        _ => None,
    };

    /// <summary>Of the visitor who sent a request.</summary>
    /// <param name="context">The request; null outside of one.</param>
    public static ReaderPreferences Of(HttpContext? context) => Parse(context?.Request.Cookies[Cookie]);

    /// <summary>The units in which an estate's pages speak to the visitor: the chosen ones, else the estate's, with the marks of the page's language unless others were chosen.</summary>
    /// <param name="snapshot">The estate; null before it is read.</param>
    /// <param name="language">The page's language.</param>
    public UnitChoice UnitsFor(EstateSnapshot? snapshot, FieldLanguage language = FieldLanguage.English)
    {
        var usual = UnitChoice.Usual(snapshot?.Contents.Estate.DisplayUnits ?? default);
        return (Units ?? usual) with { Numbers = Numbers ?? (language == FieldLanguage.Spanish ? NumberStyle.Comma : usual.Numbers) };
    }

    /// <summary>Remembers them for a year.</summary>
    /// <param name="context">The request, not yet answered.</param>
    public void Keep(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.Response.Cookies.Append(Cookie, Key, new CookieOptions { MaxAge = Remembered, SameSite = SameSiteMode.Lax, IsEssential = true, HttpOnly = true });
    }
}
