using EstateWater.Data.Model;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;
using Microsoft.AspNetCore.Http;

namespace EstateWater.Tests.Web.Preferences;

public sealed class ReaderPreferencesTests
{
    [Fact]
    public void A_browser_remembers_them()
    {
        var chosen = new ReaderPreferences(UnitChoice.Us, Appearance.Dark, NumberStyle.Point);
        var answer = new DefaultHttpContext();
        chosen.Keep(answer);
        var cookie = answer.Response.Headers.SetCookie.ToString();
        Assert.Contains("max-age=31536000", cookie, StringComparison.Ordinal);

        var next = new DefaultHttpContext();
        next.Request.Headers.Cookie = cookie[..cookie.IndexOf(';', StringComparison.Ordinal)];
        Assert.Equal(chosen, ReaderPreferences.Of(next));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("<script>")]
    [InlineData("a:b:c")]
    public void What_is_mangled_counts_as_not_chosen(string? key) => Assert.Equal(ReaderPreferences.None, ReaderPreferences.Parse(key));

    [Fact]
    public void Who_chose_nothing_reads_what_the_estate_shows()
    {
        Assert.Equal(UnitChoice.Metric, ReaderPreferences.None.UnitsFor(null));
        var snapshot = SmallEstate.Snapshot();
        var us = snapshot with { Contents = snapshot.Contents with { Estate = new Estate { Name = "Us", TimeZone = "UTC", DisplayUnits = DisplayUnits.Us } } };
        Assert.Equal(UnitChoice.Us, ReaderPreferences.None.UnitsFor(us));
        Assert.Equal(NumberStyle.Comma, ReaderPreferences.None.UnitsFor(null, FieldLanguage.Spanish).Numbers);
        Assert.Equal(UnitChoice.Metric, new ReaderPreferences(UnitChoice.Metric, Appearance.Light, NumberStyle.Point).UnitsFor(us));
    }

    [Fact]
    public void Numbers_follow_the_language_unless_they_were_chosen()
    {
        var units = UnitChoice.Metric with { Pressure = DisplayUnit.Megapascal };
        var followed = new ReaderPreferences(units, Appearance.System);
        Assert.Equal(NumberStyle.Comma, followed.UnitsFor(null, FieldLanguage.Spanish).Numbers);
        Assert.Equal(NumberStyle.Point, followed.UnitsFor(null).Numbers);
        Assert.Equal(DisplayUnit.Megapascal, followed.UnitsFor(null, FieldLanguage.Spanish).Pressure);
        Assert.Equal(NumberStyle.Point, (followed with { Numbers = NumberStyle.Point }).UnitsFor(null, FieldLanguage.Spanish).Numbers);

        // As cookies were before: whoever has one chose how numbers are written.
        Assert.Equal(NumberStyle.Point, ReaderPreferences.Parse("system:mpa.mm.m3.ha.c.en").UnitsFor(null, FieldLanguage.Spanish).Numbers);
        Assert.Equal(followed, ReaderPreferences.Parse(followed.Key));
    }

    [Fact]
    public void Dark_never_reaches_paper()
    {
        Assert.Equal("screen and (prefers-color-scheme: dark)", Appearance.System.DarkMedia());
        Assert.Equal("screen", Appearance.Dark.DarkMedia());
        Assert.Equal("not all", Appearance.Light.DarkMedia());
    }
}
