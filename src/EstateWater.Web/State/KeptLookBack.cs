using System.Text.Json;
using EstateWater.Planning.Accuracy;

namespace EstateWater.Web.State;

/// <summary>The last look back, kept beside the database so that it is there at once after a restart; one that is lost is only worked out again.</summary>
/// <param name="path">The file.</param>
public sealed class KeptLookBack(string path)
{
    private static readonly JsonSerializerOptions Form = new() { IgnoreReadOnlyProperties = true };

    /// <summary>The file of a database: <c>estate.db</c> has <c>estate.look-back.json</c>.</summary>
    public static KeptLookBack Beside(string database) => new(Path.ChangeExtension(database, ".look-back.json"));

    /// <summary>Keeps a report in the place of the one before.</summary>
    /// <param name="estate">The estate's name.</param>
    /// <param name="asOf">The moment it looked back from.</param>
    /// <param name="report">The report.</param>
    public void Keep(string estate, DateTimeOffset asOf, AccuracyReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var half = path + ".new";
        File.WriteAllBytes(half, JsonSerializer.SerializeToUtf8Bytes(new Kept(estate, asOf, report.Held), Form));
        File.Move(half, path, overwrite: true);
    }

    /// <summary>What was kept of an estate; null where nothing was, or nothing that can be read.</summary>
    /// <param name="estate">The estate's name: a database may have been given another estate since.</param>
    public (AccuracyReport Report, DateTimeOffset AsOf)? Recall(string estate)
    {
        try
        {
            return File.Exists(path) && JsonSerializer.Deserialize<Kept>(File.ReadAllBytes(path), Form) is { Held: { } held } kept && kept.Estate == estate
                ? (new AccuracyReport(held), kept.AsOf)
                : null;
        }
        catch (Exception unreadable) when (unreadable is JsonException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private sealed record Kept(string Estate, DateTimeOffset AsOf, IReadOnlyList<HeldAgainst> Held);
}
