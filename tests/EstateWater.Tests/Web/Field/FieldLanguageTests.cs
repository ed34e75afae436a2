using System.Text.Json;
using EstateWater.Web.Parts.Field;
using Microsoft.AspNetCore.Http;

namespace EstateWater.Tests.Web.Field;

public sealed class FieldLanguageTests
{
    [Theory]
    [InlineData("?lang=es", null, FieldLanguage.Spanish)]
    [InlineData("", "es", FieldLanguage.Spanish)]
    [InlineData("?lang=en", "es", FieldLanguage.English)]
    [InlineData("?lang=xx", "es", FieldLanguage.Spanish)]
    [InlineData("", null, FieldLanguage.English)]
    public void What_is_asked_for_comes_before_what_is_remembered(string query, string? remembered, FieldLanguage expected) =>
        Assert.Equal(expected, FieldLanguages.Of(Request(query, remembered)));

    [Fact]
    public void What_is_asked_for_is_remembered()
    {
        var asked = Request("?lang=es", null);
        Assert.Equal(FieldLanguage.Spanish, FieldLanguages.Choose(asked));
        Assert.StartsWith($"{FieldLanguages.Cookie}=es; max-age=31536000", asked.Response.Headers.SetCookie.ToString());

        var notAsked = Request("", "es");
        Assert.Equal(FieldLanguage.Spanish, FieldLanguages.Choose(notAsked));
        Assert.Empty(notAsked.Response.Headers.SetCookie.ToString());
    }

    [Fact]
    public void A_day_is_said_in_the_readers_language()
    {
        Assert.Equal("Wed 22 Jan", new Sample(FieldLanguage.English).Day(new DateOnly(2025, 1, 22)));
        Assert.Equal("mié 22 ene", new Sample(FieldLanguage.Spanish).Day(new DateOnly(2025, 1, 22)));
    }

    [Fact]
    public void The_script_gets_the_pages_own_words_and_those_of_the_outbox()
    {
        var words = JsonSerializer.Deserialize<Dictionary<string, string>>(new Sample(FieldLanguage.Spanish).ScriptJson)!;
        Assert.Equal("adiós", words["bye"]);
        Assert.Equal("1 registro sin enviar", words["oneWaits"]);
    }

    private static DefaultHttpContext Request(string query, string? remembered)
    {
        var context = new DefaultHttpContext();
        context.Request.QueryString = new QueryString(query);
        if (remembered is not null)
        {
            context.Request.Headers.Cookie = $"{FieldLanguages.Cookie}={remembered}";
        }

        return context;
    }

    private sealed class Sample(FieldLanguage language) : FieldWords(language)
    {
        protected override IReadOnlyDictionary<string, string> Script => new Dictionary<string, string> { ["bye"] = Say("bye", "adiós") };
    }
}
