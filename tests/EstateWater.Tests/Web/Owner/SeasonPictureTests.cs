using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using EstateWater.Web.Features.Owner;

namespace EstateWater.Tests.Web.Owner;

public sealed class SeasonPictureTests : BunitContext
{
    [Fact]
    public void The_line_of_the_season_stays_within_the_bars_and_off_the_labels()
    {
        var picture = Render<SeasonPicture>(p => p
            .Add(s => s.Season, new SeasonShare(new DateOnly(2024, 9, 15), new DateOnly(2025, 2, 10), SmallEstate.Today, 2, 2))
            .Add(s => s.Sources, [new SourceUse("bore", 12_000, 3_000, 30_000, null), new SourceUse("dam", 9_000, 0, 30_000, null), new SourceUse("mains", 9, 0, null, null)]));
        var bars = picture.FindAll("rect.frame").Skip(1).Select(bar => (Top: Of(bar, "y"), Bottom: Of(bar, "y") + Of(bar, "height"))).ToList();
        Assert.Equal(bars, picture.FindAll("line.now:not(.light)").Select(line => (Of(line, "y1"), Of(line, "y2"))));
        // Letters of 12.5 reach about 3 under their line: none of a label reaches into a bar.
        Assert.All(picture.FindAll("text"), label => Assert.DoesNotContain(bars, bar => Of(label, "y") + 3 > bar.Top && Of(label, "y") - 10 < bar.Bottom));
    }

    private static double Of(IElement shape, string attribute) => double.Parse(shape.GetAttribute(attribute)!, CultureInfo.InvariantCulture);
}
