using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The owner's page on paper, with ten nights published.</summary>
[Collection("journeys")]
public sealed class OwnerPrintTests(PublishedHost host, Browser browser) : IClassFixture<PublishedHost>
{
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task It_prints_on_one_sheet(string paper)
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.GotoAsync("/owner");
        using var pdf = PdfDocument.Open(await desk.PdfAsync(new() { Format = paper }));
        Assert.Equal(1, pdf.NumberOfPages);
        Assert.Contains("Whatwasdecided", string.Concat(pdf.GetPage(1).Letters.Select(letter => letter.Value)).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        await desk.Context.CloseAsync();
    }
}
