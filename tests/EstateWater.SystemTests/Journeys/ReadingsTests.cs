using System.Text.Json;
using System.Text.RegularExpressions;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Web.Parts.Units;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A round of readings on a phone, with and without signal.</summary>
[Collection("journeys")]
public sealed partial class ReadingsTests(RunningHost host, Browser browser) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task Without_signal_a_round_is_read_through_a_killed_browser_and_sent_once_when_signal_returns()
    {
        using var store = new PhoneStore(browser);
        string block, measure;
        await using (var context = await store.StartAsync(host.Address))
        {
            var first = await ReadingsPhone.OpenAsync(await context.NewPageAsync());
            await first.KeptAsync();
            block = await first.FirstStopAsync();
            measure = await first.MeasureOfAsync(block);
        }

        var killed = await store.StartAsync(host.Address);
        await killed.SetOfflineAsync(true);
        var phone = await ReadingsPhone.OpenAsync(await killed.NewPageAsync());
        await Expect(phone.Page.Locator("#kept-line")).ToContainTextAsync("No signal: this list was kept on this phone");
        await phone.ReadAsync(block);
        await phone.AddLeavesAsync("12.5", "12,75");
        await phone.Pressure.FillAsync("13.2");
        await Expect(phone.Running).ToContainTextAsync("Mean 12.6 ±");
        await phone.TypedIsKeptAsync("13.2");
        store.Kill();

        await using var again = await store.StartAsync(host.Address);
        await again.SetOfflineAsync(true);
        phone = await ReadingsPhone.OpenAsync(await again.NewPageAsync());
        var posts = Answers.To(phone.Page, "/api/readings");

        // Which page was open may be lost with the browser; what was typed is not.
        if (await phone.Page.Locator("#round").IsVisibleAsync())
        {
            await Expect(phone.Page.Locator($"[data-state-of='{block}']")).ToHaveTextAsync("2 leaves, not saved yet");
            await phone.ReadAsync(block);
        }

        await Expect(phone.Page.Locator("#leaves li")).ToHaveCountAsync(2);
        await Expect(phone.Pressure).ToHaveValueAsync("13.2");
        await phone.Page.Locator("#add-leaf").ClickAsync();
        await Expect(phone.Page.Locator("#leaves li")).ToHaveCountAsync(3);
        await phone.SaveAsync("Ana");
        await Expect(phone.Mine).ToHaveTextAsync([SavedRegex()]);
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^1 entry waiting"));

        posts.Clear();
        await again.SetOfflineAsync(false);
        await Expect(phone.Mine).ToHaveTextAsync([new Regex($"^Sent .* {block}: 3 leaves, {measure}, 12.8 bar$")]);

        // What is read steps back behind what is still to be read (other tests read stops of this round too).
        var (done, next) = (phone.Page.Locator($"[data-stop='{block}']"), phone.Page.Locator("[data-stop]:not(:has([data-confirmed='true'], [data-state='sent']))").First);
        await Expect(done.Locator(".why")).ToBeHiddenAsync();
        await Expect(next.Locator(".why")).ToBeVisibleAsync();
        Assert.NotEqual(await GroundOfAsync(next.Locator("button")), await GroundOfAsync(done.Locator("button")));
        await Expect(phone.Page.Locator("#kept-line")).ToContainTextAsync("The signal is back; this list is from");
        await Expect(phone.OutboxLine).ToHaveTextAsync(new Regex("^Nothing waits to be sent"));
        Assert.Equal([201], posts);
        await phone.Page.ReloadAsync();
        await Expect(phone.Page.Locator("section[aria-labelledby='stored-title']")).ToContainTextAsync($"{block}: 3 leaves, {measure}, 12.8 bar (Ana,");
    }

    [Theory]
    [InlineData("text/html", "<html>Please sign in</html>")]
    [InlineData("application/json", """{ "ok": true }""")]
    public async Task A_page_that_answers_200_in_place_of_the_server_clears_nothing(string type, string body)
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.Page.RouteAsync("**/api/readings", route => route.FulfillAsync(new() { Status = 200, ContentType = type, Body = body }));
        await phone.OpenOtherAsync("B3", "Leaves in the chamber");
        await phone.AddLeavesAsync("9");
        var answered = phone.Page.WaitForResponseAsync("**/api/readings");
        await phone.SaveAsync("Ben");
        await answered;

        // The answer is there; half a second is ample for a script that would take it for a receipt.
        await phone.Page.WaitForTimeoutAsync(500);
        await Expect(phone.Mine).ToHaveTextAsync([SavedRegex()]);
        await phone.Page.UnrouteAsync("**/api/readings");
        await phone.Page.EvaluateAsync("dispatchEvent(new Event('online'))");
        await Expect(phone.Mine).ToHaveTextAsync([new Regex("^Sent")]);
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_set_says_mean_and_spread_points_at_a_far_leaf_and_takes_it_back()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.OpenOtherAsync("B4", "Leaves in the chamber");
        await phone.AddLeavesAsync("12", "12.5", "12.25", "12.75");

        // Mean 12.375, s = 0.25·√(5∕3) = 0.323, ± 3.182·0.323∕2 = 0.51.
        await Expect(phone.Running).ToHaveTextAsync(new Regex(@"^Mean 12\.4 ± 0\.5 bar, spread 0\.3 bar · "));
        var wanted = (await phone.Running.TextContentAsync())!.Split(" · ")[1];
        await phone.AddLeavesAsync("18");

        // A slip is read again; it asks for no further leaves.
        await Expect(phone.Running).ToHaveTextAsync(new Regex($" · leaf 5 is far from the others: read it again; without it {Regex.Escape(wanted)}$"));
        await Expect(phone.Page.Locator("#leaf-hint")).ToContainTextAsync("Far from the others");
        await Expect(phone.Page.Locator("#leaves li").Last).ToHaveTextAsync("Leaf 5: 18.0 bar · far from the others");
        await phone.Leaf(5).ClickAsync();
        await Expect(phone.Pressure).ToHaveValueAsync("18");
        await phone.Button("Remove leaf 5").ClickAsync();
        await Expect(phone.Page.Locator("#leaves li")).ToHaveCountAsync(4);
        await Expect(phone.Running).ToHaveTextAsync(new Regex($"^Mean 12\\.4 .* · {Regex.Escape(wanted)}$"));

        // In MPa the same set reads a tenth, and so is typed.
        await phone.Page.GetByLabel("MPa").CheckAsync();
        await Expect(phone.Running).ToHaveTextAsync(new Regex(@"^Mean 1\.24 ± 0\.05 MPa, spread 0\.03 MPa · "));
        await phone.Pressure.FillAsync("12");
        await phone.Page.Locator("#add-leaf").ClickAsync();
        await Expect(phone.Page.Locator("#pressure-error")).ToHaveTextAsync("Pressure must be above 0 and at most 10 MPa, like 1.25");
        await phone.AddLeavesAsync("1,2");
        await phone.SaveAsync("Ben");
        await Expect(phone.Mine).ToHaveTextAsync([new Regex("^Sent .* B4: 5 leaves, leaf, 1.23 MPa$|^Sent .* B4: 5 leaves, leaf, 1.24 MPa$")]);
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task Any_leaf_is_corrected_or_removed_and_those_after_it_stay()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.OpenOtherAsync("B1", "Leaves in the chamber");
        await phone.AddLeavesAsync("12", "31", "12.5");

        // What was typed for another leaf is not lost to a tap.
        await phone.Pressure.FillAsync("11");
        await phone.Leaf(2).ClickAsync();
        await Expect(phone.Page.Locator("#pressure-error")).ToHaveTextAsync("Add this leaf first, or clear the field");
        await phone.Pressure.FillAsync("");

        await phone.Leaf(2).ClickAsync();
        await Expect(phone.Pressure).ToHaveValueAsync("31");
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await phone.Pressure.FillAsync("13");
        await phone.Button("Change leaf 2").ClickAsync();
        await Expect(phone.Leaves).ToHaveTextAsync(["Leaf 1: 12.0 bar", "Leaf 2: 13.0 bar", "Leaf 3: 12.5 bar"]);
        await phone.Leaf(1).ClickAsync();
        await phone.Button("Remove leaf 1").ClickAsync();
        await Expect(phone.Leaves).ToHaveTextAsync(["Leaf 1: 13.0 bar", "Leaf 2: 12.5 bar"]);
        await phone.Button("Bring 12.0 bar back").ClickAsync();
        await Expect(phone.Leaves).ToHaveTextAsync(["Leaf 1: 12.0 bar", "Leaf 2: 13.0 bar", "Leaf 3: 12.5 bar"]);
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_measure_tapped_on_a_set_with_leaves_asks_what_is_meant()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.OpenOtherAsync("B2", "Leaves in the chamber");
        await phone.Page.GetByLabel("leaf", new() { Exact = true }).CheckAsync();
        await phone.AddLeavesAsync("12", "12.5");
        await phone.UnfoldAsync();
        await phone.Page.GetByText("stem", new() { Exact = true }).ClickAsync();
        await Expect(phone.Page.Locator("#measure-asked")).ToHaveTextAsync("This set has 2 leaves, measured as leaf.");
        await Expect(phone.Page.GetByLabel("leaf", new() { Exact = true })).ToBeCheckedAsync();
        await phone.Page.GetByLabel("Your name").FillAsync("Ana");
        await phone.Button("Save it and begin a new set: stem").ClickAsync();
        await Expect(phone.Leaves).ToHaveCountAsync(0);
        await phone.AddLeavesAsync("9");

        // The other answer: the set itself was named wrongly.
        await phone.UnfoldAsync();
        await phone.Page.GetByText("predawn", new() { Exact = true }).ClickAsync();
        await phone.Button("It was predawn all along: change the set").ClickAsync();
        await phone.SaveAsync("Ana");
        await Expect(phone.Mine).ToHaveTextAsync([new Regex("^Sent .* B2: 1 leaf, predawn, 9.0 bar$"), new Regex("^Sent .* B2: 2 leaves, leaf, 12.3 bar$")]);
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task Once_a_leaf_is_read_the_field_for_the_next_stands_in_the_upper_part_of_the_screen()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.OpenOtherAsync("B3", "Leaves in the chamber");
        await phone.Page.GetByLabel("Your name").FillAsync("Ana");
        await phone.AddLeavesAsync("12");
        await Expect(phone.Page.Locator("#about-line")).ToHaveTextAsync(new Regex("^Leaves in the chamber · (leaf|stem) · Ana$"));

        await Expect(phone.OutboxLine).ToHaveTextAsync("B3: 1 leaf not saved yet");

        // The rest is for the phone's keyboard.
        var bottom = await phone.Pressure.EvaluateAsync<double>("field => field.getBoundingClientRect().bottom + scrollY");
        Assert.InRange(bottom, 1, 844 * 2 / 3);
        await phone.UnfoldAsync();
        await Expect(phone.Page.GetByLabel("Your name")).ToBeVisibleAsync();
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_pressure_with_its_unit_is_read_in_it_and_a_unit_that_is_none_is_refused_in_words()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.OpenOtherAsync("A2", "Leaves in the chamber");
        await phone.AddLeavesAsync("1.3 MPa", "12,5 bar");
        await Expect(phone.Page.Locator("#leaves li")).ToHaveTextAsync(["Leaf 1: 13.0 bar", "Leaf 2: 12.5 bar"]);
        await phone.Pressure.FillAsync("190 psi");
        await phone.Page.Locator("#add-leaf").ClickAsync();
        await Expect(phone.Page.Locator("#pressure-error")).ToHaveTextAsync("“psi” is no unit for this. It takes: bar, MPa");
        await phone.UnfoldAsync();
        await phone.Page.GetByLabel("Soil tube").CheckAsync();
        await phone.Page.GetByLabel("Tube", new() { Exact = true }).FillAsync("T9");
        await phone.Page.GetByLabel("water content, %").CheckAsync();
        await phone.Page.Locator("#depths input").Nth(1).FillAsync("24 cm");
        await phone.Page.Locator("#save").ClickAsync();
        await Expect(phone.Page.Locator("#depths-error")).ToHaveTextAsync("“cm” is no unit for this. It takes: %");
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_phone_reads_what_is_typed_as_the_server_reads_it()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        string[] texts = ["1.3 MPa", "1,1mpa", "13 bar", "12.", ".5", "0", "7", "1,234.5", "-3", "much", "12 psi", "37.5 in", "12\"", "95 CM", "1.2 m", "400 mm", "100 gal", "0.35 acre-in", "171.5 m³", "171,5 m3", "90 min", "6 h 30 min", "6:30", "35 %", "35%", "90 s", "12 constructor", "12 bar 3", "٣"];
        var units = TypedKind.All.Where(kind => kind.Units.All(unit => unit.Zero == 0)).SelectMany(kind => kind.Units.Select(unit => (kind.Name, Unit: unit))).ToList();
        foreach (var (kind, unit) in units)
        {
            var said = await phone.Page.EvaluateAsync<JsonElement>(
                """
                async ({ texts, kind, unit }) => {
                    const q = await import('/field/quantity.js');
                    return texts.map((text) => [q.read(text, kind, unit) ?? null, q.strangeUnit(text, kind) !== '']);
                }
                """,
                new { texts, kind, unit = unit.Symbol });
            Assert.Equal(
                texts.Select(text => (text, kind, TypedQuantity.Read(text, unit), TypedQuantity.StrangeUnit(text, unit) is not null)),
                texts.Zip(said.EnumerateArray(), (text, pair) => (text, kind, pair[0].ValueKind == JsonValueKind.Null ? (double?)null : pair[0].GetDouble(), pair[1].GetBoolean())));
        }

        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_demos_standing_clock_is_said_where_the_window_would_be_and_numbers_as_the_reader_writes_them()
    {
        var page = await browser.PhoneAsync(host.Address);
        await page.GotoAsync("/readings?lang=es");
        await new ReadingsPhone(page).ReadyAsync();
        await Expect(page.Locator("#window-clock")).ToContainTextAsync("El reloj de la demostración está parado a las 06:00");

        // Numbers are told there as Spanish writes them.
        await page.Locator("[data-open]").First.ClickAsync();
        await page.Locator("[name=pressure]").FillAsync("1.3 MPa");
        await page.Locator("#add-leaf").ClickAsync();
        await Expect(page.Locator("#leaves li")).ToHaveTextAsync(["Hoja 1: 13,0 bar"]);
        await page.GotoAsync("/readings?lang=en");
        await Expect(page.Locator("#window-clock")).ToContainTextAsync("The demo’s clock stands at 06:00, outside these hours. Try it all the same");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_bagged_leaf_is_timed_and_tubes_canopy_and_stage_are_entered_the_same_way()
    {
        // The phone's clock is set: nobody waits an hour here.
        var page = await browser.PhoneAsync(host.Address);
        await page.Clock.InstallAsync(new() { TimeDate = DateTime.UtcNow.AddMinutes(-90) });
        var phone = await ReadingsPhone.OpenAsync(page);
        await phone.OpenOtherAsync("B5", "Leaves in the chamber");
        await phone.Page.GetByLabel("stem").CheckAsync();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Leaves are in the bags now" }).ClickAsync();
        var bag = phone.Page.Locator("#bag-line");
        await Expect(bag).ToHaveTextAsync("In the bag for 0 min: wait until 15, an hour is better");
        await page.Clock.FastForwardAsync("14:30");
        await Expect(bag).ToHaveTextAsync("In the bag for 14 min: wait until 15, an hour is better");
        await page.Clock.FastForwardAsync("03:00");
        await Expect(bag).ToHaveTextAsync("In the bag for 17 min: ready; an hour is better");
        await page.Clock.FastForwardAsync("43:00");
        await Expect(bag).ToHaveTextAsync("In the bag for 60 min: ready");
        await phone.AddLeavesAsync("7.5");
        var posted = page.WaitForRequestAsync("**/api/readings");
        await phone.SaveAsync("Ana");
        Assert.InRange(JsonDocument.Parse((await posted).PostData!).RootElement.GetProperty("leaves")[0].GetProperty("baggedMin").GetDouble(), 60.5, 62);

        await phone.OpenOtherAsync("B5", "Soil tube");
        await phone.Page.GetByLabel("Tube", new() { Exact = true }).FillAsync("T9");
        await phone.Page.GetByLabel("water content, %").CheckAsync();
        await phone.Page.Locator("#depths input").Nth(1).FillAsync("140");
        await phone.Page.Locator("#save").ClickAsync();
        await Expect(phone.Page.Locator("#depths-error")).ToHaveTextAsync("Water content is 0 to 100 %, like 24.5");
        await phone.Page.Locator("#depths input").Nth(1).FillAsync("24,5");
        await phone.SaveAsync("Ana");

        await phone.OpenOtherAsync("B5", "Canopy");
        await phone.Page.Locator("#save").ClickAsync();
        await Expect(phone.Page.Locator("#shoot-error")).ToHaveTextAsync("Enter at least one thing that you saw");
        await phone.Page.GetByLabel("Shoot length, cm").FillAsync("95");
        await phone.SaveAsync("Ana");

        await phone.OpenOtherAsync("B5", "Growth stage");
        await phone.Page.GetByLabel(new Regex("^Stage of most vines")).SelectOptionAsync("35");
        await phone.SaveAsync("Ana");
        await Expect(phone.Mine).ToHaveTextAsync(
        [
            new Regex("^Sent .* B5: stage 35$"), new Regex("^Sent .* B5: canopy$"), new Regex("^Sent .* B5: tube T9, 1 depth$"), new Regex("^Sent .* B5: 1 leaf, stem, 7.5 bar$"),
        ]);
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task Depths_and_shoots_are_typed_in_inches_and_sent_in_centimetres()
    {
        var page = await browser.PhoneAsync(host.Address);
        await UnitsAsync(page, "All US");
        var phone = await ReadingsPhone.OpenAsync(page);
        await phone.OpenOtherAsync("B7", "Canopy");
        await page.GetByLabel("Shoot length, in").FillAsync("400");
        await page.Locator("#save").ClickAsync();
        await Expect(page.Locator("#shoot-error")).ToHaveTextAsync("Shoot length is 0 to 393 in, like 37");
        await page.GetByLabel("Shoot length, in").FillAsync("37,5");
        var sent = await page.RunAndWaitForRequestAsync(() => phone.SaveAsync("Ana"), "**/api/readings");
        Assert.Equal(95.25, Sent(sent).GetProperty("shootLengthCm").GetDouble());

        // Corrected, it stands there as it was typed.
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Correct B7") }).ClickAsync();
        await Expect(page.GetByLabel("Shoot length, in")).ToHaveValueAsync("37.5");

        // What is not saved yet is in the other unit when the reader is.
        await page.GetByLabel("Shoot length, in").FillAsync("36");
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the round" }).ClickAsync();
        await UnitsAsync(page, "All metric");
        phone = await ReadingsPhone.OpenAsync(page);
        await phone.OpenOtherAsync("B7", "Canopy");
        await Expect(page.GetByLabel("Shoot length, cm")).ToHaveValueAsync("91.44");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_tube_that_was_read_in_centimetres_keeps_its_depths_for_a_reader_of_inches()
    {
        var page = await browser.PhoneAsync(host.Address);
        await UnitsAsync(page, "All US");
        var phone = await ReadingsPhone.OpenAsync(page);

        // Of the demo estate, where tubes are read from 20 cm down: 7.87 in, said as 8.
        var block = await page.EvaluateAsync<string>("JSON.parse(document.getElementById('field-blocks').dataset.blocks).find(b => b.tubes.length > 0).code");
        await phone.OpenOtherAsync(block, "Soil tube");
        var inputs = page.Locator("#depths input");
        await Expect(inputs.First).ToHaveValueAsync("8");
        await page.GetByLabel("water content, %").CheckAsync();
        await inputs.Nth(1).FillAsync("24");
        await inputs.Nth(2).FillAsync("20");
        await inputs.Nth(3).FillAsync("25");
        var sent = await page.RunAndWaitForRequestAsync(() => phone.SaveAsync("Ana"), "**/api/readings");
        Assert.Equal([20, 50.8], Sent(sent).GetProperty("depths").EnumerateArray().Select(d => d.GetProperty("depthCm").GetDouble()));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task An_entry_is_corrected_and_then_taken_back_by_its_taker()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        await phone.OpenOtherAsync("B6", "Leaves in the chamber");
        await phone.AddLeavesAsync("12", "13");
        await phone.SaveAsync("Ana");
        await Expect(phone.Mine).ToHaveTextAsync([new Regex("^Sent .* B6: 2 leaves, stem, 12.5 bar$")]);
        await phone.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Correct B6") }).ClickAsync();
        await Expect(phone.Page.Locator("#take-state")).ToContainTextAsync("Correcting what was saved");
        await phone.Leaf(2).ClickAsync();
        await phone.Button("Remove leaf 2").ClickAsync();
        await phone.SaveAsync("Ana");
        await Expect(phone.Mine).ToHaveTextAsync([new Regex("^Sent .* B6: 1 leaf, stem, 12.0 bar$")]);
        await phone.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take B6 .* back") }).ClickAsync();
        await Expect(phone.Mine).ToHaveTextAsync([new Regex("^Sent .* B6: taken back$")]);
        await phone.Page.ReloadAsync();
        await phone.ReadyAsync();
        await Expect(phone.Page.Locator("body")).Not.ToContainTextAsync("B6: 1 leaf, stem, 12.0 bar (Ana");
        await phone.Page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_set_is_read_and_saved_with_the_keyboard_alone()
    {
        var page = await browser.DeskAsync(host.Address);
        var phone = await ReadingsPhone.OpenAsync(page);
        await page.GetByLabel("Your name").FocusAsync();
        await page.Keyboard.TypeAsync("Ana");
        await page.Locator("[data-open]").Nth(1).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#take-title")).ToBeFocusedAsync();
        await Keys.TabToAsync(page, "[name=pressure]");
        await page.Keyboard.TypeAsync("12.5");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#leaves li")).ToHaveCountAsync(1);
        await Expect(phone.Pressure).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("13");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#leaves li")).ToHaveCountAsync(2);
        await Keys.TabToAsync(page, "#save");
        await page.Keyboard.PressAsync("Enter");
        await Expect(phone.Mine.First).ToContainTextAsync("Sent");
        await Expect(page.Locator("[data-open]").Nth(1)).ToBeFocusedAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_phone_computes_what_the_server_computes()
    {
        var phone = await ReadingsPhone.OpenAsync(await browser.PhoneAsync(host.Address));
        double[][] sets = [[12, 12.5, 12.25, 12.75, 18], [9, 9, 9, 9, 9, 12], [10, 14], [11.2, 12.9, 10.4, 13.3, 12.2, 11.8, 12.6], [7.5, 7.6, 7.4, 7.5, 8.2]];
        foreach (var set in sets)
        {
            var leaves = set.Select(bar => new LeafFact(DateTimeOffset.UnixEpoch, WaterPotentialMeasure.Leaf, bar / 10)).ToList();
            var server = ReadingSetStatistics.Of(leaves);
            var said = await phone.Page.EvaluateAsync<double[]>(
                """
                async (set) => {
                    const s = await import('/taking/statistics.js');
                    const numbers = JSON.parse(document.getElementById('field-blocks').dataset.numbers);
                    return [s.mean(set), s.spread(set), s.halfWidth(set, numbers.t), s.leavesFor(s.spread(set), 1, numbers.t), ...s.outliers(set, numbers)];
                }
                """,
                set);
            Assert.Equal(10 * server.MeanMpa, said[0], 6);
            Assert.Equal(10 * server.StandardDeviationMpa!.Value, said[1], 6);
            Assert.Equal(10 * server.HalfWidthMpa()!.Value, said[2], 4);
            Assert.Equal(server.LeavesNeededFor(0.1)!.Value, said[3]);
            Assert.Equal(server.OutlierLeaves.Select(i => (double)i), said.Skip(4));
        }

        await phone.Page.Context.CloseAsync();
    }

    private static JsonElement Sent(IRequest request) => JsonDocument.Parse(request.PostData!).RootElement;

    private static Task<string> GroundOfAsync(ILocator button) => button.EvaluateAsync<string>("button => getComputedStyle(button).backgroundColor");

    private static async Task UnitsAsync(IPage page, string all)
    {
        await page.GotoAsync("/preferences");
        await page.GetByRole(AriaRole.Button, new() { Name = all }).ClickAsync();
        await Expect(page.Locator(".kept")).ToHaveTextAsync("Kept.");
    }

    [GeneratedRegex(@"^Saved on this phone \d\d:\d\d")]
    private static partial Regex SavedRegex();
}
