using System.Globalization;
using System.Text.Json.Nodes;

namespace EstateWater.Benchmarks;

/// <summary>Files of many sizes among the static assets of a published program, so that a page finds one of its own size beside it.</summary>
internal static class StaticFiles
{
    private const int StepBytes = 1024, MostBytes = 160 * 1024;

    /// <summary>The path of the file nearest in size.</summary>
    public static string NearestTo(long bytes) => Name((int)Math.Clamp((bytes + (StepBytes / 2)) / StepBytes * StepBytes, StepBytes, MostBytes));

    /// <summary>Lays the files down and enters them in the program's list of assets, which serves nothing else.</summary>
    public static void Add(string program)
    {
        var list = Path.Combine(program, "EstateWater.Web.staticwebassets.endpoints.json");
        var manifest = JsonNode.Parse(File.ReadAllText(list))!;
        var endpoints = manifest["Endpoints"]!.AsArray();
        var random = new Random(1);
        for (var bytes = StepBytes; bytes <= MostBytes; bytes += StepBytes)
        {
            var content = new byte[bytes];
            random.NextBytes(content);
            File.WriteAllBytes(Path.Combine(program, "wwwroot", Name(bytes)), content);
            endpoints.Add(Endpoint(Name(bytes), bytes));
        }

        File.WriteAllText(list, manifest.ToJsonString());
    }

    private static string Name(int bytes) => string.Create(CultureInfo.InvariantCulture, $"bytes-{bytes}.bin");

    private static JsonObject Endpoint(string name, int bytes) => new()
    {
        ["Route"] = name,
        ["AssetFile"] = name,
        ["Selectors"] = new JsonArray(),
        ["ResponseHeaders"] = new JsonArray(
            Header("Cache-Control", "no-cache"),
            Header("Content-Length", bytes.ToString(CultureInfo.InvariantCulture)),
            Header("Content-Type", "application/octet-stream"),
            Header("ETag", $"\"{name}\""),
            Header("Last-Modified", "Thu, 01 Jan 2026 00:00:00 GMT")),
        ["EndpointProperties"] = new JsonArray(),
    };

    private static JsonObject Header(string name, string value) => new() { ["Name"] = name, ["Value"] = value };
}
