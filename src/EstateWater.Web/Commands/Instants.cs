using System.Globalization;

namespace EstateWater.Web.Commands;

/// <summary>Instants as commands take them: ISO 8601 with an offset, for without one the same words would be another moment on another computer.</summary>
internal static class Instants
{
    /// <summary>Reads an instant; false where there is none, or none with an offset.</summary>
    public static bool TryRead(string text, out DateTimeOffset instant) =>
        DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out instant)
        && (text.EndsWith('Z') || (text.Length > 6 && text[^6] is '+' or '-' && text[^3] == ':'));

    /// <summary>What is wrong with a text that is none, and what would be right.</summary>
    public static string Refusal(string text) => $"--as-of: '{text}' is no instant with an offset; write it like 2026-07-14T06:00:00+02:00";
}
