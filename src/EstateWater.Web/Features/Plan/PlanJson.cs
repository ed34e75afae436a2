using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace EstateWater.Web.Features.Plan;

/// <summary>The plan document: what the command line prints and what a published plan keeps.</summary>
public static class PlanJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    /// <summary>Writes a plan.</summary>
    public static string Write(Planning.Plan plan) => JsonSerializer.Serialize(plan, Options);

    /// <summary>Reads a plan back.</summary>
    /// <exception cref="JsonException">The text is no plan.</exception>
    public static Planning.Plan Read(string json) =>
        JsonSerializer.Deserialize<Planning.Plan>(json, Options) ?? throw new JsonException("The text is no plan.");
}
