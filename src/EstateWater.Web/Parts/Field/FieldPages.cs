using EstateWater.Web.Features.SignIn;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;

namespace EstateWater.Web.Parts.Field;

/// <summary>Which pages are used outdoors.</summary>
public static class FieldPages
{
    /// <summary>The language of the answer to a request as a whole: only pages used outdoors have another than English.</summary>
    /// <param name="context">The request; null outside of one.</param>
    public static FieldLanguage LanguageOf(HttpContext? context) => IsFieldPage(PageOf(context)) ? FieldLanguages.Of(context) : FieldLanguage.English;

    /// <summary>The language of what a page itself says, and so of its numbers: also of one whose menu is English.</summary>
    /// <param name="context">The request; null outside of one.</param>
    public static FieldLanguage ReadIn(HttpContext? context) =>
        PageOf(context) is { } page && (IsFieldPage(page) || page.IsDefined(typeof(BilingualAttribute), inherit: false)) ? FieldLanguages.Of(context) : FieldLanguage.English;

    private static Type? PageOf(HttpContext? context) => context?.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type;

    private static bool IsFieldPage(Type? page) =>
        page?.GetCustomAttributes(typeof(LayoutAttribute), inherit: true).OfType<LayoutAttribute>().Any(l => l.LayoutType == typeof(FieldLayout) || l.LayoutType == typeof(DoorLayout)) == true;
}
