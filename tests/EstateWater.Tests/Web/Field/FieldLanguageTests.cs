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

    [Theory]
    [InlineData("es-MX,es;q=0.9,en;q=0.8", FieldLanguage.Spanish)]
    [InlineData("es-419", FieldLanguage.Spanish)]
    [InlineData("en-US,es;q=0.5", FieldLanguage.English)]
    [InlineData("en;q=0.4, ES;q=0.7", FieldLanguage.Spanish)]
    [InlineData("fr-CA,fr;q=0.9,es;q=0.3", FieldLanguage.Spanish)]
    [InlineData("es;q=0, fr", FieldLanguage.English)]
    [InlineData(";;;", FieldLanguage.English)]
    public void Until_something_is_chosen_the_browsers_language_is_read(string accepted, FieldLanguage expected)
    {
        var request = Request("", null);
        request.Request.Headers.AcceptLanguage = accepted;
        Assert.Equal(expected, FieldLanguages.Of(request));
        var chosen = Request("", "en");
        chosen.Request.Headers.AcceptLanguage = accepted;
        Assert.Equal(FieldLanguage.English, FieldLanguages.Of(chosen));
    }

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
