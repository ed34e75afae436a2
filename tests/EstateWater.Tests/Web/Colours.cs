using System.Globalization;

namespace EstateWater.Tests.Web;

/// <summary>How colours stand against each other.</summary>
internal static class Colours
{
    /// <summary>Contrast ratio, WCAG 2.2: from 1 to 21.</summary>
    public static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>CIE 1976 L* of a colour.</summary>
    public static double Lightness(string hex)
    {
        var y = Luminance(hex);
        return y > 216.0 / 24389 ? 116 * Math.Cbrt(y) - 16 : y * 24389 / 27;
    }

    private static double Luminance(string hex)
    {
        var whole = hex.Length == 4 ? string.Concat(hex.SelectMany(c => c == '#' ? "#" : $"{c}{c}")) : hex;
        var parts = Enumerable.Range(0, 3).Select(i => int.Parse(whole.AsSpan(1 + 2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0).ToArray();
        var linear = parts.Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4)).ToArray();
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
    }
}
