using Bunit;
using EstateWater.Web.Features.People;

namespace EstateWater.Tests.Web.Access;

public sealed class NewLinkTests : BunitContext
{
    [Theory]
    [InlineData("http://localhost:5080/join/abc", true)]
    [InlineData("http://127.0.0.1:5080/join/abc", true)]
    [InlineData("https://water.example/join/abc", false)]
    [InlineData("http://192.0.2.7:5080/join/abc", false)]
    public void A_link_that_opens_on_this_computer_alone_says_so(string address, bool isWarned)
    {
        var link = Render<NewLink>(p => p.Add(l => l.Name, "Ben").Add(l => l.Address, address));
        Assert.Equal(isWarned, link.Markup.Contains("This link opens on this computer alone.", StringComparison.Ordinal));
        Assert.Equal(address, link.Find("input").GetAttribute("value"));
    }
}
