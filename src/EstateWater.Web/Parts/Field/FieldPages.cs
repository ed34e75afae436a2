using EstateWater.Web.Features.SignIn;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;

namespace EstateWater.Web.Parts.Field;

/// <summary>Which pages are used outdoors.</summary>
public static class FieldPages
{
    /// <summary>The language in which the answer to a request is written: only pages used outdoors have another than English.</summary>
    /// <param name="context">The request; null outside of one.</param>
    public static FieldLanguage LanguageOf(HttpContext? context) => IsFieldPage(context) ? FieldLanguages.Of(context) : FieldLanguage.English;

    private static bool IsFieldPage(HttpContext? context) =>
        context?.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type is { } page
        && page.GetCustomAttributes(typeof(LayoutAttribute), inherit: true).OfType<LayoutAttribute>().Any(l => l.LayoutType == typeof(FieldLayout) || l.LayoutType == typeof(DoorLayout));
}
