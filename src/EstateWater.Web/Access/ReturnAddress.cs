namespace EstateWater.Web.Access;

/// <summary>Where to go after signing in: only within the program, whatever a link says.</summary>
public static class ReturnAddress
{
    /// <summary>Its name in the address of the sign-in page.</summary>
    public const string Parameter = "return";

    /// <summary>The address when it is a path of ours; null when it is none, or leads anywhere else.</summary>
    /// <param name="text">As it came with the request.</param>
    public static string? Local(string? text) =>
        text is ['/', ..] and not ['/', '/' or '\\', ..] && !text.Contains('\\') && !text.Any(char.IsControl) ? text : null;
}
