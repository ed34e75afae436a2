using System.Text.RegularExpressions;
using EstateWater.Web.Parts;

namespace EstateWater.Tests.Web;

// WCAG 2.2: text 4.5 to 1 (1.4.3), drawings and edges 3 to 1 (1.4.11); pages used in the sun hold text to 7 to 1 (1.4.6).
public sealed partial class ColourTests
{
    private static readonly string[] Texts = ["--ink", "--ink-soft", "--link", "--accent"];

    private static readonly string[] Grounds = ["--ground", "--panel", "--note-ground"];

    private static readonly (string, string)[] OnButtons = [("--on-button", "--button"), ("--on-button", "--stop"), ("--ground", "--ink")];

    /// <summary>What a page's colours come from, the last rule of a token counting.</summary>
    public static TheoryData<string, double> Schemes => new() { { "light", 4.5 }, { "dark", 4.5 }, { "field", 7 }, { "field by night", 7 }, { "paper", 7 } };

    [Theory]
    [MemberData(nameof(Schemes))]
    public void Text_can_be_read_on_every_ground(string scheme, double least)
    {
        var tokens = TokensOf(scheme);
        var pairs = Texts.SelectMany(text => Grounds.Select(ground => (text, ground)))
            .Append(("--ink", "--accent-ground"))
            .Concat(scheme.StartsWith("field", StringComparison.Ordinal) ? OnButtons : []);
        Assert.All(pairs, pair => Assert.True(
            Colours.Contrast(tokens[pair.Item1], tokens[pair.Item2]) >= least, $"{pair} {tokens[pair.Item1]} on {tokens[pair.Item2]}: {Colours.Contrast(tokens[pair.Item1], tokens[pair.Item2]):0.0}"));
        Assert.True(Colours.Contrast(tokens["--ink"], tokens["--ground"]) >= 7);
    }

    [Theory]
    [MemberData(nameof(Schemes))]
    public void Edges_can_be_seen(string scheme, double least)
    {
        _ = least;
        var tokens = TokensOf(scheme);
        Assert.All(Grounds, ground => Assert.True(Colours.Contrast(tokens["--outline"], tokens[ground]) >= 3, ground));
    }

    // A shade may melt into the ground or into the outline, never into both.
    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public void Every_stress_class_stands_out_from_the_map(string scheme)
    {
        var tokens = TokensOf(scheme);
        Assert.All(StressLook.Classes.Append(StressLook.Unknown), look => Assert.True(
            Math.Max(Colours.Contrast(look.Fill, tokens["--panel"]), Colours.Contrast(tokens["--outline"], tokens["--panel"])) >= 3
            && Math.Max(Colours.Contrast(look.Fill, tokens["--panel"]), Colours.Contrast(look.Fill, tokens["--outline"])) >= 3,
            look.Key));
    }

    [Fact]
    public void Every_colour_by_day_has_one_by_night() =>
        Assert.Equal(ColoursIn("app.css", ":root"), ColoursIn("dark.css", ":root"), (day, night) => day.Keys.Order().SequenceEqual(night.Keys.Order()));

    private static Dictionary<string, string> TokensOf(string scheme) => scheme switch
    {
        "light" => ColoursIn("app.css", ":root"),
        "dark" => Over(TokensOf("light"), ColoursIn("dark.css", ":root")),
        "field" => Over(TokensOf("light"), ColoursIn("field/field.css", ":root")),
        "field by night" => Over(TokensOf("field"), ColoursIn("field/field.css", ":root[data-look=\"dark\"]")),
        "paper" => Over(TokensOf("light"), ColoursIn("app.css", "  :root")),
        _ => throw new ArgumentOutOfRangeException(nameof(scheme), scheme, "A scheme."),
    };

    private static Dictionary<string, string> Over(Dictionary<string, string> tokens, Dictionary<string, string> later) =>
        later.Concat(tokens.Where(token => !later.ContainsKey(token.Key))).ToDictionary();

    private static Dictionary<string, string> ColoursIn(string file, string selector)
    {
        var css = File.ReadAllText(Path.Combine(Repository.Root, "src/EstateWater.Web/wwwroot", file));
        var start = css.IndexOf($"\n{selector} {{", StringComparison.Ordinal);
        Assert.True(start >= 0, $"{file} has no rule {selector}");
        var rule = css[start..css.IndexOf('}', start)];
        return Colour().Matches(rule).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);
    }

    [GeneratedRegex("(--[a-z-]+): (#[0-9a-f]{6}|#[0-9a-f]{3});")]
    private static partial Regex Colour();
}
