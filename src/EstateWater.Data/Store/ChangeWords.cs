using System.Globalization;
using EstateWater.Agronomy.Units;
using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Data.Store;

/// <summary>How the record of changes tells of plans and sets: in words that stay true, on the estate's clock.</summary>
internal sealed class ChangeWords(TimeZoneInfo zone)
{
    /// <summary>On the clock of the estate in the database; UTC while there is none.</summary>
    public static async Task<ChangeWords> ForAsync(EstateDb db, CancellationToken cancellation) => new(await ZoneAsync(db, cancellation));

    /// <summary>The zone of the estate in the database; UTC while there is none.</summary>
    public static async Task<TimeZoneInfo> ZoneAsync(EstateDb db, CancellationToken cancellation) =>
        await db.Estates.AsNoTracking().Select(e => e.TimeZone).SingleOrDefaultAsync(cancellation) is { } name
            ? TimeZoneInfo.FindSystemTimeZoneById(name)
            : TimeZoneInfo.Utc;

    /// <summary>For example “Tue 21 Jan 20:00”.</summary>
    public string Clock(DateTimeOffset at) => When(at).ToString();

    /// <summary>The same, for a sentence.</summary>
    public Sentence When(DateTimeOffset at) => Sentence.Of($"{TimeZoneInfo.ConvertTime(at, zone):ddd d MMM HH:mm}");

    /// <summary>For example “Published 12 sets, 68.5 h (note)”.</summary>
    public static string Published(PublishedPlan plan) =>
        Short(FormattableString.Invariant($"Published {plan.Sets.Count} {(plan.Sets.Count == 1 ? "set" : "sets")}, {plan.Sets.Sum(s => s.Hours):0.##} h{(plan.Note is null ? "" : $" ({plan.Note})")}"));

    /// <summary>For example “V03 of Tue 21 Jan 20:00: 5.5 h from Tue 21 Jan 20:10, 160.5 m³ (note)”.</summary>
    public Sentence Confirmed(PublishedSet set, SetConfirmation said)
    {
        var from = said.StartedAt == set.Start ? Sentence.Empty : Sentence.Of($" from {When(said.StartedAt)}");
        var run = said.Hours == 0
            ? "could not run" + (said.NotRun is { } reason ? $", {ReasonWord(reason)}" : "")
            : Sentence.Of($"{said.Hours:0.##} h{from}");
        var meter = said.MeterM3 is { } m3 ? Sentence.Of($", {Quantity.Meter(m3)}") : Sentence.Empty;
        var note = said.Note is null ? "" : $" ({said.Note})";
        return Sentence.Of($"{set.ValveCode} of {When(set.Start)}: {run}{meter}{note}");
    }

    /// <summary>The reason as people say it.</summary>
    public static string ReasonWord(NotRunReason reason) => reason switch
    {
        NotRunReason.PumpDown => "pump down",
        NotRunReason.ValveBroken => "valve broken",
        NotRunReason.PipeBurst => "pipe burst",
        NotRunReason.NoPower => "no power",
        NotRunReason.Other => "other",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "A reason of the list."),
    };

    /// <summary>The text, cut where the record would refuse it.</summary>
    public static string Short(Sentence sentence) => sentence.ToString() is var text && text.Length <= ChangeRecord.LongestText ? text : text[..(ChangeRecord.LongestText - 1)] + "…";
}
