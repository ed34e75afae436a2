using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using EstateWater.Web.Access;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Hosting;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace EstateWater.Tests.Web.Sets;

public sealed class ConfirmationEndpointTests : IAsyncLifetime
{
    private PublishedEstate estate = null!;
    private static readonly DateTimeOffset EnteredAt = new(2025, 1, 23, 7, 10, 0, TimeSpan.FromHours(2));
    private WebApplication app = null!;
    private HttpClient phone = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        estate = await PublishedEstate.CreateAsync(Cancellation);
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        estate.AddTo(builder.Services);
        builder.Services.AddSignIn(new ServeOptions { Demo = true });
        app = builder.Build();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseFieldWorker();
        app.MapConfirmations();
        app.MapPhotos();

        // The morning after: the sets have run.
        estate.Clock.SetUtcNow(EnteredAt);
        await app.StartAsync(Cancellation);
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        phone = new HttpClient { BaseAddress = new Uri(address) };
        phone.DefaultRequestHeaders.Add(OwnPages.Header, "1");
    }

    public async ValueTask DisposeAsync()
    {
        phone.Dispose();
        await app.DisposeAsync();
        await estate.DisposeAsync();
    }

    [Fact]
    public async Task An_entry_is_stored_with_its_water_and_the_receipt_names_it()
    {
        var entry = Entry();
        var answer = await Post(entry);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var receipt = await answer.Content.ReadFromJsonAsync<ConfirmationReceipt>(Cancellation);
        Assert.Equal((entry.EntryId, entry.SetId), (receipt!.EntryId, receipt.SetId));

        await using var db = estate.Open();
        var stored = await db.SetConfirmations.SingleAsync(Cancellation);
        Assert.Equal((5.5, 160.5, "Ben"), (stored.Hours, stored.MeterM3, stored.ConfirmedBy));
        Assert.Equal(5.5, (await db.AppliedWaters.SingleAsync(Cancellation)).Hours);
    }

    [Fact]
    public async Task Twenty_posts_of_one_entry_at_once_store_one()
    {
        var entry = Entry();
        var answers = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Post(entry)));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Created);
        Assert.Equal(19, answers.Count(a => a.StatusCode == HttpStatusCode.OK));
        await using var db = estate.Open();
        Assert.Equal(1, await db.SetConfirmations.CountAsync(Cancellation));
        Assert.Equal(1, await db.AppliedWaters.CountAsync(Cancellation));
    }

    [Fact]
    public async Task The_same_id_with_other_content_is_a_conflict_and_changes_nothing()
    {
        var entry = Entry();
        await Post(entry);
        var answer = await Post(entry with { Hours = 2 });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        await using var db = estate.Open();
        Assert.Equal(5.5, (await db.SetConfirmations.SingleAsync(Cancellation)).Hours);
    }

    [Fact]
    public async Task A_set_that_someone_confirmed_already_is_a_conflict_that_says_who()
    {
        await Post(Entry());
        var answer = await Post(Entry() with { ConfirmedBy = "Cem" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("Ben confirmed this set already", await answer.Content.ReadAsStringAsync(Cancellation));
    }

    [Fact]
    public async Task A_correction_replaces_what_was_said_and_counts_alone()
    {
        var first = Entry();
        await Post(first);
        var answer = await Post(Entry() with { Hours = 4, Replaces = first.EntryId });
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Post(Entry() with { Hours = 3, Replaces = first.EntryId })).StatusCode);
        await using var db = estate.Open();
        Assert.Equal(2, await db.SetConfirmations.CountAsync(Cancellation));
        Assert.Equal(4, (await db.AppliedWaters.SingleAsync(Cancellation)).Hours);
    }

    [Fact]
    public async Task A_start_that_is_still_ahead_is_refused_kindly_in_the_readers_language()
    {
        var ahead = Entry() with { StartedAt = EnteredAt.AddHours(1) };
        var answer = await Post(ahead);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("which is still ahead", (await answer.Content.ReadFromJsonAsync<JsonElement>(Cancellation)).GetProperty("detail").GetString(), StringComparison.Ordinal);
        phone.DefaultRequestHeaders.Add("Cookie", "estate-water-language=es");
        var spanish = await (await Post(ahead)).Content.ReadFromJsonAsync<JsonElement>(Cancellation);
        Assert.StartsWith("A esa hora todavía no llegamos.", spanish.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_is_taken_once_after_its_entry_and_shown()
    {
        var entry = Entry();
        var address = PhotoEndpoint.PathOf(entry.EntryId!.Value);
        Assert.Equal(HttpStatusCode.NotFound, (await PostPhoto(address, Jpeg(1600, 900))).StatusCode);
        await Post(entry);
        Assert.Equal(HttpStatusCode.Created, (await PostPhoto(address, Jpeg(1600, 900))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PostPhoto(address, Jpeg(1600, 900))).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await PostPhoto(address, Jpeg(800, 900))).StatusCode);
        var shown = await phone.GetAsync(address, Cancellation);
        Assert.Equal("image/jpeg", shown.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Jpeg(1600, 900), await shown.Content.ReadAsByteArrayAsync(Cancellation));
        Assert.Equal(HttpStatusCode.NotFound, (await phone.GetAsync(PhotoEndpoint.PathOf(Guid.NewGuid()), Cancellation)).StatusCode);
    }

    [Fact]
    public async Task What_is_no_small_jpeg_is_refused()
    {
        var entry = Entry();
        var address = PhotoEndpoint.PathOf(entry.EntryId!.Value);
        await Post(entry);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostPhoto(address, "<svg onload='x'/>"u8.ToArray())).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostPhoto(address, Jpeg(1601, 900))).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostPhoto(address, [0xFF, 0xD8, 0xFF, 0xD9])).StatusCode);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await PostPhoto(address, new byte[PhotoEndpoint.LargestBytes + 1])).StatusCode);
        phone.DefaultRequestHeaders.Remove(OwnPages.Header);
        Assert.Equal(HttpStatusCode.Forbidden, (await PostPhoto(address, Jpeg(16, 9))).StatusCode);
        await using var db = estate.Open();
        Assert.False(await db.SetPhotos.AnyAsync(Cancellation));
    }

    [Fact]
    public async Task An_unknown_set_is_not_found()
    {
        var answer = await Post(Entry() with { SetId = 999 });
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task A_set_that_could_not_run_is_stored_without_water()
    {
        var answer = await Post(Entry() with { Hours = 0, MeterM3 = null, Note = "pump would not start" });
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        await using var db = estate.Open();
        Assert.Equal("pump would not start", (await db.SetConfirmations.SingleAsync(Cancellation)).Note);
        Assert.False(await db.AppliedWaters.AnyAsync(Cancellation));
    }

    [Theory]
    [InlineData("gal", "en", "The meter must show 0 gal or more, like 171.5.", "The photo is no whole JPEG picture.")]
    [InlineData("m3", "es", "El medidor marca 0 m³ o más, como 171,5.", "La foto no es un JPEG completo.")]
    public async Task A_refusal_names_its_rule_in_the_senders_units_and_language(string volume, string language, string meter, string photo)
    {
        var numbers = language == "es" ? "es" : "en";
        phone.DefaultRequestHeaders.Add("Cookie", $"{FieldLanguages.Cookie}={language}; {ReaderPreferences.Cookie}={Uri.EscapeDataString($"system:bar.mm.{volume}.ha.c.{numbers}")}");
        async Task<string?> DetailAsync(HttpResponseMessage answer) => (await answer.Content.ReadFromJsonAsync<JsonElement>(Cancellation)).GetProperty("detail").GetString();
        Assert.Equal(meter, await DetailAsync(await Post(Entry() with { MeterM3 = -1 })));
        Assert.Equal(photo, await DetailAsync(await PostPhoto(PhotoEndpoint.PathOf(Guid.NewGuid()), "<svg/>"u8.ToArray())));
    }

    public static TheoryData<string, ConfirmationMessage> Mistakes => new()
    {
        { "hours", Entry(1) with { Hours = -1 } },
        { "hours", Entry(1) with { Hours = 24.5 } },
        { "hours", Entry(1) with { Hours = null } },
        { "meterM3", Entry(1) with { MeterM3 = -0.1 } },
        { "confirmedBy", Entry(1) with { ConfirmedBy = " " } },
        { "note", Entry(1) with { Hours = 0, Note = null } },
        { "note", Entry(1) with { Hours = 0, NotRun = "Other" } },
        { "notRun", Entry(1) with { NotRun = "PumpDown" } },
        { "notRun", Entry(1) with { Hours = 0, NotRun = "Tired", Note = "no" } },
        { "meterM3", Entry(1) with { MeterBeforeM3 = 5, MeterAfterM3 = 4 } },
        { "entryId", Entry(1) with { EntryId = Guid.Empty } },
        { "setId", Entry(1) with { SetId = null } },
        { "enteredAt", Entry(1) with { EnteredAt = null } },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public async Task A_mistake_is_refused_naming_its_field(string field, ConfirmationMessage entry)
    {
        var answer = await Post(entry);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(Cancellation);
        Assert.Equal(field, Assert.Single(problem.GetProperty("errors").EnumerateObject()).Name);
        Assert.NotEmpty(problem.GetProperty("detail").GetString()!);
        await using var db = estate.Open();
        Assert.False(await db.SetConfirmations.AnyAsync(Cancellation));
    }

    [Theory]
    [InlineData("Origin", "https://elsewhere.example")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Another_sites_page_cannot_confirm(string header, string value)
    {
        phone.DefaultRequestHeaders.Add(header, value);
        Assert.Equal(HttpStatusCode.Forbidden, (await Post(Entry())).StatusCode);
    }

    [Fact]
    public async Task Without_the_header_of_our_script_nothing_is_taken()
    {
        phone.DefaultRequestHeaders.Remove(OwnPages.Header);
        Assert.Equal(HttpStatusCode.Forbidden, (await Post(Entry())).StatusCode);
    }

    [Fact]
    public async Task Our_own_origin_is_welcome()
    {
        phone.DefaultRequestHeaders.Add("Origin", phone.BaseAddress!.GetLeftPart(UriPartial.Authority));
        phone.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
        Assert.Equal(HttpStatusCode.Created, (await Post(Entry())).StatusCode);
    }

    [Fact]
    public async Task A_stored_entry_makes_a_new_snapshot_and_a_repeat_does_not()
    {
        var entry = Entry();
        await Post(entry);
        Assert.Equal(1, await MadeAsync(1));
        await Post(entry);
        await Task.Delay(100, Cancellation);
        Assert.Equal(1, estate.SnapshotsMade);
    }

    [Fact]
    public async Task The_worker_may_serve_the_page_one_folder_up()
    {
        var answer = await phone.GetAsync(FieldWorker.Path, Cancellation);
        Assert.Equal("/", Assert.Single(answer.Headers.GetValues("Service-Worker-Allowed")));
    }

    private static ConfirmationMessage Entry(int setId) => new()
    {
        EntryId = Guid.NewGuid(),
        SetId = setId,
        Hours = 5.5,
        MeterM3 = 160.5,
        ConfirmedBy = "Ben",
        EnteredAt = EnteredAt,
    };

    private async Task<HttpResponseMessage> PostPhoto(string address, byte[] bytes)
    {
        using var body = new ByteArrayContent(bytes);
        return await phone.PostAsync(address, body, Cancellation);
    }

    // Start, a comment, a baseline frame of one component, end: no picture, but the headers of one (ITU-T T.81, annex B).
    private static byte[] Jpeg(int width, int height) =>
    [
        0xFF, 0xD8, 0xFF, 0xFE, 0, 4, 1, 2,
        0xFF, 0xC0, 0, 11, 8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 1, 1, 0x11, 0,
        0xFF, 0xD9,
    ];

    private ConfirmationMessage Entry() => Entry(estate.SetIds[0]);

    private Task<HttpResponseMessage> Post(ConfirmationMessage entry) => phone.PostAsJsonAsync(ConfirmationEndpoint.Path, entry, Cancellation);

    private async Task<int> MadeAsync(int count)
    {
        for (var tries = 0; estate.SnapshotsMade < count && tries < 100; tries++)
        {
            await Task.Delay(20, Cancellation);
        }

        return estate.SnapshotsMade;
    }
}
