using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.Data.Store.Taken;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Features.Taking;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace EstateWater.Tests.Web.Taking;

public sealed class ReadingEndpointTests : IAsyncLifetime
{
    private RunningHost host = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // The host's clock stands at six in the morning.
    private static DateTimeOffset Now => SmallEstate.AsOf;

    public async ValueTask InitializeAsync()
    {
        host = await RunningHost.StartAsync(StoredEstate.Contents);
        host.Http.DefaultRequestHeaders.Add(OwnPages.Header, "1");
    }

    public ValueTask DisposeAsync() => host.DisposeAsync();

    [Fact]
    public async Task A_set_is_stored_leaf_by_leaf_and_the_receipt_names_it()
    {
        var entry = Set(12.5, 12, 13.25);
        var answer = await Post(entry);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var receipt = await answer.Content.ReadFromJsonAsync<ReadingReceipt>(Cancellation);
        Assert.Equal((entry.EntryId, "B1", 3), (receipt!.EntryId, receipt.Block, receipt.Observations));

        var leaves = await LeavesOfToday();
        Assert.Equal([12.5, 12, 13.25], leaves.Select(l => l.TensionBar));
        Assert.All(leaves, l => Assert.Equal(("Mara", "G1"), (l.Observer, l.Group)));
        await using var db = await Open();
        var change = await db.Changes.SingleAsync(c => c.Kind == ChangeKind.Reading, Cancellation);
        Assert.Equal(("Mara", "B1: 3 leaves, leaf, mean 12.6 bar, from Wed 22 Jan 05:00"), (change.By, change.What));
    }

    [Fact]
    public async Task Fifty_posts_of_one_entry_at_once_store_one()
    {
        var entry = Set(12, 13);
        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => Post(entry)));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Created);
        Assert.Equal(49, answers.Count(a => a.StatusCode == HttpStatusCode.OK));
        Assert.Equal(2, (await LeavesOfToday()).Count);
        await using var db = await Open();
        Assert.Equal(1, await db.TakenEntries.CountAsync(Cancellation));
    }

    [Fact]
    public async Task The_same_id_with_other_content_is_a_conflict_and_changes_nothing()
    {
        var entry = Set(12, 13);
        await Post(entry);
        var answer = await Post(entry with { Leaves = Set(12, 13.5).Leaves });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal([12.0, 13], (await LeavesOfToday()).Select(l => l.TensionBar));
    }

    [Fact]
    public async Task All_mistakes_are_named_at_once_by_their_fields()
    {
        var answer = await Post(new ReadingMessage
        {
            EntryId = Guid.Empty,
            Kind = "chamber",
            Block = " ",
            Measure = "root",
            Leaves =
            [
                new() { TakenAt = Now, TensionBar = 12 },
                new() { TensionBar = -1, Exposure = "moon", BaggedMin = -5, DelayS = -1 },
                new() { TakenAt = Now, TensionBar = 101 },
            ],
            Note = new string('x', 201),
            TakenBy = new string('x', 201),
        });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(Cancellation);
        Assert.Equal(
            ["block", "enteredAt", "entryId", "leaves[1].baggedMin", "leaves[1].delayS", "leaves[1].exposure", "leaves[1].takenAt", "leaves[1].tensionBar", "leaves[2].tensionBar", "measure", "note", "takenBy"],
            problem.GetProperty("errors").EnumerateObject().Select(e => e.Name).Order(StringComparer.Ordinal));
        Assert.Contains("at most 100 bar, like 12.5", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    // 1000 cm are 393.7 in, 95 cm 37.4 in, 40 cm 15.7 in; 100 bar are 10 MPa.
    [Theory]
    [InlineData("mpa.in.m3.ha.c.en", "A leaf’s pressure is above 0 and at most 10 MPa, like 1.25.", "A depth is above 0 and at most 393 in, like 16.", "Shoot length is 0 to 393 in, like 37.")]
    [InlineData("bar.mm.m3.ha.c.en", "A leaf’s pressure is above 0 and at most 100 bar, like 12.5.", "A depth is above 0 and at most 1000 cm, like 40.", "Shoot length is 0 to 1000 cm, like 95.")]
    public async Task A_refusal_names_its_rule_in_the_senders_units_and_what_is_kept_stays_bar_and_cm(string units, string pressure, string depth, string shoot)
    {
        host.Http.DefaultRequestHeaders.Add("Cookie", $"{ReaderPreferences.Cookie}={Uri.EscapeDataString($"system:{units}")}");
        async Task<string?> DetailAsync(ReadingMessage entry) => (await (await Post(entry)).Content.ReadFromJsonAsync<JsonElement>(Cancellation)).GetProperty("detail").GetString();
        Assert.Equal(pressure, await DetailAsync(Set(101)));
        Assert.Equal(depth, await DetailAsync(Soil(1001)));
        Assert.Equal(shoot, await DetailAsync(Entry("canopy") with { ShootLengthCm = 1001 }));

        Assert.Equal(HttpStatusCode.Created, (await Post(Entry("canopy") with { ShootLengthCm = 95 })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(Set(12.5))).StatusCode);
        await using var db = await Open();
        Assert.Equal(95, (await db.CanopyVisits.SingleAsync(v => v.BlockCode == "B1" && v.ShootLengthCm == 95, Cancellation)).ShootLengthCm);
        Assert.Equal([12.5], (await LeavesOfToday()).Select(l => l.TensionBar));
    }

    public static TheoryData<string, ReadingMessage> Mistakes => new()
    {
        { "kind", Entry("weather") },
        { "kind", Entry("0") },
        { "leaves", Entry("chamber") with { Measure = "leaf", Leaves = [] } },
        { "tube", Soil(30) with { Tube = "" } },
        { "depths", Soil() },
        { "depths", Soil(30, 30) },
        { "depths[0].depthCm", Soil(0) },
        { "standardCount", Soil() with { Depths = [new() { DepthCm = 30, Count = 6000 }] } },
        { "depths[0].vwcM3PerM3", Soil() with { Depths = [new() { DepthCm = 30 }] } },
        { "depths[0].vwcM3PerM3", Soil() with { Depths = [new() { DepthCm = 30, VwcM3PerM3 = 24 }] } },
        { "takenAt", Soil(30) with { TakenAt = null } },
        { "canopy", Entry("canopy") },
        { "shootLengthCm", Entry("canopy") with { ShootLengthCm = 1001 } },
        { "shadedFraction", Entry("canopy") with { ShadedFraction = 35 } },
        { "growingTipsPct", Entry("canopy") with { GrowingTipsPct = -1 } },
        { "visualStress", Entry("canopy") with { VisualStress = 4 } },
        { "elStage", Entry("stage") },
        { "elStage", Entry("stage") with { ElStage = 48 } },
        { "replaces", Entry("withdrawal") },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public async Task A_mistake_is_refused_naming_its_field(string field, ReadingMessage entry)
    {
        var answer = await Post(entry);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, Assert.Single((await answer.Content.ReadFromJsonAsync<JsonElement>(Cancellation)).GetProperty("errors").EnumerateObject()).Name);
        await using var db = await Open();
        Assert.False(await db.TakenEntries.AnyAsync(Cancellation));
    }

    // All rules in one sender's language: none may be left in English.
    [Fact]
    public async Task All_rules_are_told_in_the_senders_language()
    {
        host.Http.DefaultRequestHeaders.Add("Cookie", $"{FieldLanguages.Cookie}=es");
        foreach (var (_, entry) in Mistakes.Select(row => row.Data).Append(("leaves", Set(101))).Append(("entryId", new ReadingMessage())))
        {
            var rules = (await (await Post(entry)).Content.ReadFromJsonAsync<JsonElement>(Cancellation)).GetProperty("errors").EnumerateObject().SelectMany(e => e.Value.EnumerateArray()).Select(r => r.GetString()!).ToList();
            Assert.NotEmpty(rules);
            Assert.All(rules, rule => Assert.DoesNotMatch(@"\b(is|the|at most|like|needs|says|names|has|enter|each)\b", rule.ToLowerInvariant()));
        }

        Assert.Equal("La presión de una hoja es más de 0 y no más de 100 bar, como 12,5.", (await (await Post(Set(101))).Content.ReadFromJsonAsync<JsonElement>(Cancellation)).GetProperty("detail").GetString());
    }

    [Fact]
    public async Task An_unknown_block_a_moment_ahead_and_one_long_past_are_refused()
    {
        Assert.Equal(HttpStatusCode.NotFound, (await Post(Set(12) with { Block = "B9" })).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Post(Entry("stage") with { ElStage = 30, TakenAt = Now.AddMinutes(16) })).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Post(Entry("stage") with { ElStage = 30, TakenAt = Now.AddDays(-32) })).StatusCode);
        host.Http.DefaultRequestHeaders.Remove(OwnPages.Header);
        Assert.Equal(HttpStatusCode.Forbidden, (await Post(Set(12))).StatusCode);
        Assert.Empty(await LeavesOfToday());
    }

    [Fact]
    public async Task A_phones_clock_that_runs_a_little_ahead_is_set_back_and_a_repeat_is_still_the_same()
    {
        var entry = Set(12, 13) with { Leaves = [Leaf(12, Now.AddMinutes(8)), Leaf(13, Now.AddMinutes(10))] };
        Assert.Equal(HttpStatusCode.Created, (await Post(entry)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Post(entry)).StatusCode);
        Assert.Equal([Now.AddMinutes(-2), Now], (await LeavesOfToday()).Select(l => l.TakenAt));
    }

    [Fact]
    public async Task Tubes_canopy_and_stages_go_into_the_tables_that_imports_fill_and_into_the_exported_folder()
    {
        Assert.Equal(HttpStatusCode.Created, (await Post(Soil(60, 30))).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(Soil() with { Tube = "T9", StandardCount = 12000, Depths = [new() { DepthCm = 40, Count = 6200 }] })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(Entry("canopy") with { ShootLengthCm = 95, ShadedFraction = 0.35, VisualStress = 1, Note = "tips slow" })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(Entry("stage") with { ElStage = 35 })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(Set(12.5))).StatusCode);

        await using var db = await Open();
        var folder = Directory.CreateTempSubdirectory("estatewater-");
        EstateFolder.Write((await EstateStore.LoadAsync(db, Cancellation))!, Path.Combine(folder.FullName, "out"));
        var read = EstateFolder.Read(Path.Combine(folder.FullName, "out")).Contents!;
        folder.Delete(recursive: true);
        Assert.Equal([(30, 0.24), (60, 0.24)], read.SoilMoistures.Where(m => m.Tube == "T1" && m.Date == SmallEstate.Today).Select(m => ((int)m.DepthCm, m.VwcM3PerM3!.Value)));
        Assert.Equal((6200, 12000), (read.SoilMoistures.Single(m => m.Tube == "T9").Count, read.SoilMoistures.Single(m => m.Tube == "T9").StandardCount));
        Assert.Equal((95, 0.35, null, 1, "tips slow"), read.CanopyVisits.Select(v => (v.ShootLengthCm, v.ShadedFraction, v.GrowingTipsPct, v.VisualStress, v.Note)).Single());
        Assert.Contains(read.Stages, s => s is { BlockCode: "B1", ElStage: 35 } && s.Date == SmallEstate.Today);
        Assert.Contains(read.ChamberReadings, r => r.TensionBar == 12.5 && r.Observer == "Mara");
    }

    [Fact]
    public async Task What_there_can_be_only_one_of_a_day_is_refused_the_second_time()
    {
        await Post(Entry("stage") with { ElStage = 33 });
        var answer = await Post(Entry("stage") with { ElStage = 34, TakenBy = "Ben" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("is stored already", await answer.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        await Post(Soil(30));
        Assert.Equal(HttpStatusCode.Conflict, (await Post(Soil(30, 60))).StatusCode);
    }

    [Fact]
    public async Task A_correction_counts_alone_may_name_another_block_and_is_recorded_with_what_was_before()
    {
        var first = Set(12, 13);
        await Post(first);
        var second = Set(14) with { Block = "B2", Replaces = first.EntryId };
        Assert.Equal(HttpStatusCode.Created, (await Post(second)).StatusCode);
        Assert.Equal(("B2", 14.0), (await LeavesOfToday()).Select(l => (l.BlockCode, l.TensionBar)).Single());
        Assert.Equal(HttpStatusCode.Conflict, (await Post(Set(15) with { Replaces = first.EntryId })).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Post(Set(15) with { Replaces = Guid.NewGuid() })).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Post(Entry("stage") with { ElStage = 30, Replaces = second.EntryId })).StatusCode);
        await using var db = await Open();
        Assert.Equal("B1: 2 leaves, leaf, mean 12.5 bar, from Wed 22 Jan 05:00", (await db.Changes.OrderBy(c => c.Id).LastAsync(Cancellation)).Before);
    }

    [Fact]
    public async Task An_entry_is_withdrawn_by_its_taker_only_and_once()
    {
        var entry = Set(12, 13);
        await Post(entry);
        var others = await Post(Entry("withdrawal") with { Replaces = entry.EntryId, TakenBy = "Ben" });
        Assert.Equal(HttpStatusCode.Conflict, others.StatusCode);
        Assert.Contains("Mara took this", await others.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        Assert.Equal(2, (await LeavesOfToday()).Count);

        var withdrawal = Entry("withdrawal") with { Replaces = entry.EntryId };
        Assert.Equal(HttpStatusCode.Created, (await Post(withdrawal)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Post(withdrawal)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Post(Entry("withdrawal") with { Replaces = entry.EntryId })).StatusCode);
        Assert.Empty(await LeavesOfToday());
    }

    [Fact]
    public async Task The_manager_takes_entries_back_and_what_they_replaced_stands_again()
    {
        var first = Set(12, 13);
        await Post(first);
        var second = Set(14) with { Replaces = first.EntryId };
        await Post(second);
        await using (var db = await Open())
        {
            Assert.Null(await TakenEntries.UndoAsync(db, second.EntryId!.Value, "Cleo", Now, Cancellation));
            Assert.NotNull(await TakenEntries.UndoAsync(db, second.EntryId.Value, "Cleo", Now, Cancellation));
        }

        // Cleo put back what Mara took: the reading stays Mara's, to correct as well, and the record says who put it back.
        Assert.Equal([("Mara", 12.0), ("Mara", 13)], (await LeavesOfToday()).Select(l => (l.Observer, l.TensionBar)));
        await using var again = await Open();
        Assert.Equal(("Cleo", "B1: 2 leaves, leaf, mean 12.5 bar, from Wed 22 Jan 05:00"), await again.Changes.OrderByDescending(c => c.Id).Select(c => ValueTuple.Create(c.By, c.What)).FirstAsync(Cancellation));
        Assert.Contains("Cleo corrected this already", await (await Post(Set(15) with { Replaces = second.EntryId })).Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        var last = await again.TakenEntries.OrderBy(e => e.Id).LastAsync(Cancellation);
        Assert.Null(await TakenEntries.UndoAsync(again, first.EntryId!.Value, "Cleo", Now, Cancellation) is null ? "took back what no longer counts" : null);
        Assert.Null(await TakenEntries.UndoAsync(again, last.EntryId, "Cleo", Now, Cancellation));
        Assert.Equal([14.0], (await LeavesOfToday()).Select(l => l.TensionBar));
        var standing = await again.TakenEntries.OrderBy(e => e.Id).LastAsync(Cancellation);
        Assert.Equal(HttpStatusCode.Created, (await Post(Set(14.5) with { Replaces = standing.EntryId })).StatusCode);
    }

    [Fact]
    public async Task A_folder_written_before_does_not_bring_back_what_was_corrected_or_withdrawn()
    {
        var (set, stage) = (Set(12, 13), Entry("stage") with { ElStage = 33 });
        await Post(set);
        await Post(stage);
        await using var db = await Open();
        var before = (await EstateStore.LoadAsync(db, Cancellation))!;
        await Post(Set(12.5) with { Replaces = set.EntryId });
        await Post(Entry("withdrawal") with { Replaces = stage.EntryId });
        await EstateStore.ImportAsync(db, before, Cancellation);
        Assert.Equal([12.5], (await LeavesOfToday()).Select(l => l.TensionBar));
        Assert.False(await db.Stages.AnyAsync(s => s.Date == SmallEstate.Today, Cancellation));
    }

    [Fact]
    public async Task A_refusal_is_said_in_the_readers_language()
    {
        host.Http.DefaultRequestHeaders.Add("Cookie", "estate-water-language=es");
        var problem = await (await Post(Set(12) with { Block = "B9" })).Content.ReadFromJsonAsync<JsonElement>(Cancellation);
        Assert.Equal("Ese bloque no existe: avise al encargado.", problem.GetProperty("detail").GetString());
    }

    private static ReadingMessage Entry(string kind) => new()
    {
        EntryId = Guid.NewGuid(),
        Kind = kind,
        Block = "B1",
        TakenAt = Now.AddHours(-1),
        TakenBy = "Mara",
        EnteredAt = Now,
    };

    private static ReadingMessage Set(params double[] bar) => Entry("chamber") with
    {
        Measure = "leaf",
        Leaves = [.. bar.Select((b, i) => Leaf(b, Now.AddHours(-1).AddMinutes(i)))],
    };

    private static ReadingMessage.LeafMessage Leaf(double bar, DateTimeOffset at) => new() { TakenAt = at, TensionBar = bar, Group = "G1", Exposure = "sun" };

    private static ReadingMessage Soil(params double[] depthsCm) => Entry("soil") with
    {
        Tube = "T1",
        Depths = [.. depthsCm.Select(d => new ReadingMessage.DepthMessage { DepthCm = d, VwcM3PerM3 = 0.24 })],
    };

    private Task<HttpResponseMessage> Post(ReadingMessage entry) => host.Http.PostAsJsonAsync(ReadingEndpoint.Path, entry, Cancellation);

    private async Task<IReadOnlyList<ChamberReading>> LeavesOfToday()
    {
        await using var db = await Open();
        var midnight = Now.AddHours(-6);
        return await db.ChamberReadings.AsNoTracking().Where(r => r.TakenAt >= midnight).OrderBy(r => r.TakenAt).ThenBy(r => r.Id).ToListAsync(Cancellation);
    }

    private Task<EstateDb> Open() => host.App.Services.GetRequiredService<IDbContextFactory<EstateDb>>().CreateDbContextAsync(Cancellation);
}
