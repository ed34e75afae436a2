namespace EstateWater.Web.Parts.Field;

/// <summary>Languages of the pages that are used outdoors.</summary>
public enum FieldLanguage
{
    /// <summary>English.</summary>
    English,

    /// <summary>Spanish.</summary>
    Spanish,
}

/// <summary>Which language a visitor reads: asked for with <c>?lang=es</c>, and remembered in a cookie; until then their browser's.</summary>
public static class FieldLanguages
{
    /// <summary>Remembers the choice.</summary>
    public const string Cookie = "estate-water-language";

    private const string Query = "lang";

    /// <summary>The language's tag: en, es.</summary>
    public static string Tag(this FieldLanguage language) => language == FieldLanguage.Spanish ? "es" : "en";

    /// <summary>The language's own name, as its readers know it.</summary>
    public static string OwnName(this FieldLanguage language) => language == FieldLanguage.Spanish ? "Español" : "English";

    /// <summary>What a request asks for, else what was remembered, else what the browser prefers, else English.</summary>
    /// <param name="context">The request; null outside of one.</param>
    public static FieldLanguage Of(HttpContext? context) =>
        Named(context?.Request.Query[Query]) ?? Named(context?.Request.Cookies[Cookie]) ?? Preferred(context?.Request) ?? FieldLanguage.English;

    /// <summary>As <see cref="Of"/>, and remembers what was asked for, for a year.</summary>
    /// <param name="context">The request, not yet answered; null outside of one.</param>
    public static FieldLanguage Choose(HttpContext? context)
    {
        if (context is not null)
        {
            Keep(context, context.Request.Query[Query]);
        }

        return Of(context);
    }

    /// <summary>Remembers a language for a year; a tag that is none changes nothing.</summary>
    /// <param name="context">The request, not yet answered.</param>
    /// <param name="tag">The language's tag.</param>
    public static void Keep(HttpContext context, string? tag)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (Named(tag) is { } asked)
        {
            context.Response.Cookies.Append(Cookie, asked.Tag(), new CookieOptions { MaxAge = TimeSpan.FromDays(365), SameSite = SameSiteMode.Lax, IsEssential = true, HttpOnly = true });
        }
    }

    /// <summary>Where the same page is read in a language.</summary>
    /// <param name="language">The language.</param>
    /// <param name="path">The page's path, with what else its address says.</param>
    public static string Href(this FieldLanguage language, string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return $"{path}{(path.Contains('?') ? '&' : '?')}{Query}={language.Tag()}";
    }

    // es-MX and es-419 are read as es.
    private static FieldLanguage? Preferred(HttpRequest? request) => request?.GetTypedHeaders().AcceptLanguage
        .Where(accepted => accepted.Quality is not 0)
        .OrderByDescending(accepted => accepted.Quality ?? 1)
        .Select(accepted => Named(accepted.Value.Value?.Split('-')[0].ToLowerInvariant()))
        .FirstOrDefault(language => language is not null);

    /// <summary>The language of a tag; null where pages have none of it.</summary>
    /// <param name="tag">en, es.</param>
    public static FieldLanguage? Named(string? tag) => Enum.GetValues<FieldLanguage>().Cast<FieldLanguage?>().FirstOrDefault(l => l!.Value.Tag() == tag);
}
