using System.Globalization;
using System.Text.RegularExpressions;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Web.Parts;

namespace EstateWater.Tests.Web;

public sealed partial class StressLookTests
{
    [Fact]
    public void Every_class_of_the_table_in_use_has_a_look() =>
        Assert.Equal(StressClassTable.Default.Words, StressLook.Classes.Select(look => look.Words));

    [Fact]
    public void Words_of_no_class_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StressLook.Of("rather dry"));

    [Fact]
    public void Shades_darken_in_steps_that_grey_printing_keeps() =>
        // 18 steps of lightness between neighbours: told apart side by side and on a grey print.
        Assert.All(StressLook.Classes.Zip(StressLook.Classes.Skip(1)), pair => Assert.True(Lightness(pair.First.Fill) - Lightness(pair.Second.Fill) >= 18));

    [Fact]
    public void Labels_can_be_read_on_their_shade() =>
        // WCAG 2.2, 1.4.3: at least 4.5 to 1.
        Assert.All(StressLook.Classes.Append(StressLook.Unknown), look => Assert.True(Contrast(look.Ink, look.Fill) >= 4.5, look.Key));

    [Theory]
    [InlineData("--ink", "--ground", 7)]
    [InlineData("--ink", "--panel", 7)]
    [InlineData("--ink-soft", "--ground", 4.5)]
    [InlineData("--ink-soft", "--panel", 4.5)]
    [InlineData("--ink-soft", "--note-ground", 4.5)]
    [InlineData("--link", "--ground", 4.5)]
    [InlineData("--link", "--panel", 4.5)]
    [InlineData("--link", "--note-ground", 4.5)]
    [InlineData("--accent", "--ground", 4.5)]
    [InlineData("--accent", "--panel", 4.5)]
    [InlineData("--accent", "--note-ground", 4.5)]
    [InlineData("--ink", "--accent-ground", 4.5)]
    [InlineData("--outline", "--panel", 3)]
    public void Pairs_of_the_style_sheet_keep_their_contrast_in_light_and_dark(string front, string back, double least)
    {
        var schemes = Schemes();
        Assert.Equal(2, schemes.Count);
        Assert.All(schemes, scheme => Assert.True(Contrast(scheme[front], scheme[back]) >= least, $"{scheme[front]} on {scheme[back]}"));
    }

    private static List<Dictionary<string, string>> Schemes()
    {
        var css = File.ReadAllText(Path.Combine(Repository.Root, "src/EstateWater.Web/wwwroot/app.css"));
        return [.. RootRule().Matches(css).Take(2).Select(rule => ColourRule().Matches(rule.Value).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value))];
    }

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>CIE 1976 L* of a colour.</summary>
    private static double Lightness(string hex)
    {
        var y = Luminance(hex);
        return y > 216.0 / 24389 ? 116 * Math.Cbrt(y) - 16 : y * 24389 / 27;
    }

    private static double Luminance(string hex)
    {
        var parts = Enumerable.Range(0, 3).Select(i => int.Parse(hex.AsSpan(1 + 2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0).ToArray();
        var linear = parts.Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4)).ToArray();
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
    }

    [GeneratedRegex(@":root\s*\{[^}]*\}")]
    private static partial Regex RootRule();

    [GeneratedRegex("(--[a-z-]+): (#[0-9a-f]{6});")]
    private static partial Regex ColourRule();
}
