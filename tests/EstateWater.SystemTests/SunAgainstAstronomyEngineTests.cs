using System.Diagnostics;
using System.Text.Json;
using EstateWater.Agronomy.Sun;

namespace EstateWater.SystemTests;

/// <summary>Holds a year of suns against npm's astronomy-engine, which computes from another theory.</summary>
public sealed class SunAgainstAstronomyEngineTests
{
    private static readonly (string Zone, double Latitude, double Longitude)[] Places =
    [
        ("America/Los_Angeles", 38.5, -122.5), ("America/New_York", 42.7, -77.0), ("America/Santiago", -33.7, -71.0),
        ("America/Argentina/Mendoza", -33.03, -68.87), ("Europe/Paris", 44.84, -0.58), ("Europe/Berlin", 50.0, 8.2),
        ("Europe/Lisbon", 41.2, -7.6), ("Africa/Johannesburg", -33.9, 19.0), ("Asia/Tbilisi", 41.9, 45.7),
        ("Australia/Adelaide", -34.53, 138.95), ("Australia/Perth", -33.9, 115.1), ("Pacific/Auckland", -41.5, 173.9),
    ];

    private static readonly JsonSerializerOptions CamelCase = new(JsonSerializerDefaults.Web);
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "SunCheck");

    // 30 s at noon, 60 s at rise and set: NOAA states a minute for the low-accuracy series between 72° N and S.
    [Fact]
    public async Task A_year_of_noons_rises_and_sets_in_both_hemispheres()
    {
        var suns = Places.SelectMany(place => Dates().Select(date => (Place: place, Sun: SunOf(place, date)))).ToList();
        var questions = suns.Select(s => new { s.Place.Latitude, s.Place.Longitude, Midnight = MidnightOf(s.Sun.Date, s.Place.Zone) });

        await File.WriteAllTextAsync(Path.Combine(Folder, "questions.json"), JsonSerializer.Serialize(questions, CamelCase), TestContext.Current.CancellationToken);
        await Run("npm", "ci", "--no-audit", "--no-fund");
        var printed = await Run("node", "sun.mjs", "questions.json");
        var answers = JsonSerializer.Deserialize<List<Answer>>(printed, CamelCase)!;

        Assert.Equal(suns.Count, answers.Count);
        Assert.True(suns.Count > 800, $"Only {suns.Count} days were compared.");
        for (var i = 0; i < suns.Count; i++)
        {
            var (place, sun) = suns[i];
            Near(answers[i].Noon, sun.Noon, 30, $"noon, {place.Zone}, {sun.Date:O}");
            Near(answers[i].Rise, sun.Sunrise, 60, $"sunrise, {place.Zone}, {sun.Date:O}");
            Near(answers[i].Set, sun.Sunset, 60, $"sunset, {place.Zone}, {sun.Date:O}");
        }
    }

    private static IEnumerable<DateOnly> Dates()
    {
        for (var date = new DateOnly(2024, 1, 1); date.Year == 2024; date = date.AddDays(5))
        {
            yield return date;
        }
    }

    private static SolarDay SunOf((string Zone, double Latitude, double Longitude) place, DateOnly date) =>
        SolarDay.For(date, place.Latitude, place.Longitude, TimeZoneInfo.FindSystemTimeZoneById(place.Zone));

    private static DateTimeOffset MidnightOf(DateOnly date, string zoneId)
    {
        var midnight = date.ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(midnight, TimeZoneInfo.FindSystemTimeZoneById(zoneId).GetUtcOffset(midnight));
    }

    private static void Near(DateTimeOffset? expected, DateTimeOffset? actual, double seconds, string what)
    {
        Assert.True(expected is not null && actual is not null, $"Missing: {what}.");
        var apart = Math.Abs((actual.Value - expected.Value).TotalSeconds);
        Assert.True(apart <= seconds, $"{what}: {apart:F1} s apart, expected {expected:O}, was {actual:O}.");
    }

    private static async Task<string> Run(string program, params string[] arguments)
    {
        var tool = await Tool.RunAsync(Folder, program, arguments, TestContext.Current.CancellationToken);
        Assert.True(tool.ExitCode == 0, $"{program} {string.Join(' ', arguments)} ended with {tool.ExitCode}: {tool.Errors}");
        return tool.Output;
    }

    private sealed record Answer(DateTimeOffset Noon, DateTimeOffset? Rise, DateTimeOffset? Set);
}
