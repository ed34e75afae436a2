using System.Text.RegularExpressions;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>The week's report as it comes out of the printer.</summary>
[Collection("journeys")]
public sealed class ReportTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    private const int DemoBlocks = 36;

    /// <summary>The estate's own sheets before the blocks: sentence, map, water, signature.</summary>
    private const int MostFrontSheets = 3;

    // Points of 1/72 inch: A4 is 210 mm × 297 mm, Letter 8.5 × 11 inches.
    [Theory]
    [InlineData("A4", 595, 842)]
    [InlineData("Letter", 612, 792)]
    public async Task The_whole_report_prints_two_blocks_a_sheet_and_breaks_none(string paper, double width, double height)
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.GotoAsync("/report");
        await desk.GetByLabel("Paper").SelectOptionAsync(new SelectOptionValue { Label = paper });
        await desk.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await Expect(desk).ToHaveURLAsync(new Regex("paper=" + paper.ToLowerInvariant()));

        // The address changes before the last block has arrived.
        await desk.WaitForLoadStateAsync(LoadState.Load);
        await Expect(desk.Locator("article")).ToHaveCountAsync(DemoBlocks);
        using var pdf = PdfDocument.Open(await desk.PdfAsync(new() { PreferCSSPageSize = true }));
        var sheets = pdf.GetPages().ToList();
        Assert.All(sheets, sheet => Assert.True(Math.Abs(sheet.Width - width) < 1.5 && Math.Abs(sheet.Height - height) < 1.5, $"{sheet.Width} × {sheet.Height}"));

        // A block begins with its recommendation and ends with its canopy: both lie on one sheet.
        var begun = sheets.Select(sheet => Count(sheet, "Recommendation")).ToList();
        Assert.Equal(begun, sheets.Select(sheet => Count(sheet, "Canopyandnotes")));
        Assert.Equal(DemoBlocks, begun.Sum());
        Assert.InRange(begun.FindIndex(blocks => blocks > 0), 1, MostFrontSheets);
        Assert.DoesNotContain(0, begun.SkipWhile(blocks => blocks == 0));

        // The table of water is one piece, from its heading to its sum.
        Assert.Equal(sheets.FindIndex(sheet => Count(sheet, "Waterrecommended") > 0), sheets.FindIndex(sheet => Count(sheet, "Together") > 0));
        Assert.InRange(sheets.Count, DemoBlocks / 2, (DemoBlocks / 2) + MostFrontSheets + 4);
        await desk.Context.CloseAsync();
    }

    [Fact]
    public async Task Paper_carries_the_signature_and_no_controls()
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.GotoAsync("/report?blocks=A1");
        await Expect(desk.GetByRole(AriaRole.Button, new() { Name = "Print" })).ToBeVisibleAsync();
        using var pdf = PdfDocument.Open(await desk.PdfAsync(new() { PreferCSSPageSize = true }));
        var text = string.Concat(pdf.GetPages().Select(Text));
        Assert.Contains("Signature", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Tickblocks", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Blocksinthisreport", text, StringComparison.Ordinal);
        Assert.Equal(1, Regex.Count(text, "Recommendation(?!s)"));
        await desk.Context.CloseAsync();
    }

    [Fact]
    public async Task Some_blocks_are_ticked_with_the_keyboard_and_the_print_button_prints()
    {
        var desk = await browser.DeskAsync(host.Address);
        await desk.AddInitScriptAsync("window.print = () => { window.printed = true; }");
        await desk.GotoAsync("/report");
        await desk.GetByLabel("Blocks", new() { Exact = true }).SelectOptionAsync("ticked");
        await desk.Locator(".ask summary").FocusAsync();
        await desk.Keyboard.PressAsync("Enter");
        await desk.GetByRole(AriaRole.Checkbox, new() { NameRegex = Code("B2") }).FocusAsync();
        await desk.Keyboard.PressAsync("Space");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Show" }).PressAsync("Enter");
        await Expect(desk.Locator("article")).ToHaveCountAsync(1);
        await Expect(desk.Locator("article h2")).ToContainTextAsync("B2");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Print" }).PressAsync("Enter");
        Assert.True(await desk.EvaluateAsync<bool>("window.printed === true"));
        await desk.Context.CloseAsync();
    }

    // Letters without spaces: how a printer sets spaces differs.
    private static string Text(Page sheet) => string.Concat(sheet.Letters.Select(letter => letter.Value)).Replace(" ", "", StringComparison.Ordinal);

    private static int Count(Page sheet, string heading) => Regex.Count(Text(sheet), heading + "(?!s)");

    private static Regex Code(string block) => new($"^{block}\\b");
}
