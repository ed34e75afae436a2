using EstateWater.Data.Model;

namespace EstateWater.Web.Access;

/// <summary>The name with which someone signs in and which stands under what they do.</summary>
public static class PersonName
{
    /// <summary>The name without needless spaces.</summary>
    public static string Clean(string? typed) => string.Join(' ', (typed ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Whether it can be one: not empty, not too long, nothing invisible.</summary>
    public static bool IsGood(string cleaned)
    {
        ArgumentNullException.ThrowIfNull(cleaned);
        return cleaned.Length is > 0 and <= Person.LongestName
            && cleaned.EnumerateRunes().All(r => !System.Text.Rune.IsControl(r) && System.Text.Rune.GetUnicodeCategory(r) != System.Globalization.UnicodeCategory.Format);
    }
}
