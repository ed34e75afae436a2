using System.Text.RegularExpressions;

namespace EstateWater.Tests.Web;

/// <summary>Fields of live pages: what somebody types is never put back to what it was some answers ago.</summary>
public sealed partial class LiveFieldTests
{
    /// <summary>A field with a written value and a handler beside it is written anew by every late answer; a bound one is not.</summary>
    [Fact]
    public void Fields_that_are_listened_to_are_bound()
    {
        var pages = Path.Combine(Repository.Root, "src", "EstateWater.Web");
        var listened = Directory.EnumerateFiles(pages, "*.razor", SearchOption.AllDirectories)
            .SelectMany(file => Field().Matches(File.ReadAllText(file)).Select(field => (File: Path.GetRelativePath(pages, file), Text: field.Value)))
            .Where(field => Handler().IsMatch(field.Text))
            .ToList();
        Assert.True(listened.Count > 8, "the pages have such fields");
        Assert.DoesNotContain(listened, field => WrittenValue().IsMatch(field.Text));
    }

    // An attribute may hold “=>” in quotes.
    [GeneratedRegex("""<(?:input|select|textarea)\b(?:"[^"]*"|[^">])*>""")]
    private static partial Regex Field();

    [GeneratedRegex(@"\s@(?:bind|onchange|oninput)\b")]
    private static partial Regex Handler();

    [GeneratedRegex(@"\svalue=""@")]
    private static partial Regex WrittenValue();
}
