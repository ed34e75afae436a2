using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.WebUtilities;

namespace EstateWater.Web.Access;

/// <summary>Secrets that work once: typed from a console or carried by a link. Only their hash is kept.</summary>
public static class OneTimeSecret
{
    /// <summary>Of a code's letters, each of which stands for five bits. [letters]</summary>
    public const int CodeLetters = 26;

    private const int LinkBytes = 32;

    // No I, L, O and U: they are read as other letters and figures.
    private const string Letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    /// <summary>A code of 130 random bits to be typed, in groups of four.</summary>
    public static string NewCode() => string.Join('-', new string(RandomNumberGenerator.GetItems<char>(Letters, CodeLetters)).Chunk(4).Select(group => new string(group)));

    /// <summary>A secret of 256 random bits as part of an address.</summary>
    public static string NewLinkPart() => WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(LinkBytes));

    /// <summary>The code as it was meant: letters large, what is easily misread put right, no hyphens or spaces.</summary>
    public static string Plain(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return new([.. typed.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit).Select(letter => letter switch { 'O' => '0', 'I' or 'L' => '1', _ => letter })]);
    }

    /// <summary>What is kept of a secret: SHA-256, which is enough for what is random. [32 bytes]</summary>
    public static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
