namespace EstateWater.Web.Parts.Preferences;

/// <summary>Whether pages are light or dark.</summary>
public enum Appearance
{
    /// <summary>As the device is set.</summary>
    System,

    /// <summary>Always light.</summary>
    Light,

    /// <summary>Always dark.</summary>
    Dark,
}

/// <summary>How an appearance reaches the style sheets.</summary>
public static class Appearances
{
    /// <summary>Its name in forms, cookies and style sheets.</summary>
    public static string Key(this Appearance look) => look.ToString().ToLowerInvariant();

    /// <summary>Where the dark style sheet holds. Never in print: paper is light.</summary>
    public static string DarkMedia(this Appearance look) => look switch
    {
        Appearance.Dark => "screen",
        Appearance.Light => "not all",
        _ => "screen and (prefers-color-scheme: dark)",
    };

    /// <summary>The appearance of a name; the device's where there is no such name.</summary>
    public static Appearance Parse(string? key) => Enum.GetValues<Appearance>().FirstOrDefault(look => look.Key() == key);
}
