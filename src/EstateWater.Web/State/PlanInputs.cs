using EstateWater.Data.Model;

namespace EstateWater.Web.State;

/// <summary>Tells whether a plan that was made still holds for what is known now.</summary>
public static class PlanInputs
{
    /// <summary>
    /// Whether two states of an estate give the same plan at a moment. Confirming a set that lies
    /// ahead of the moment changes nothing that a block is learned from; learning every block anew would take seconds for nothing.
    /// </summary>
    public static bool AreSame(EstateContents one, EstateContents other, DateTimeOffset asOf) =>
        one.Estate == other.Estate
        && one.Stations.SequenceEqual(other.Stations)
        && one.Sources.SequenceEqual(other.Sources)
        && one.Valves.SequenceEqual(other.Valves)
        && one.Blocks.SequenceEqual(other.Blocks)
        && one.Stages.SequenceEqual(other.Stages)
        && one.Targets.SequenceEqual(other.Targets)
        && one.Weather.SequenceEqual(other.Weather)
        && one.Forecasts.SequenceEqual(other.Forecasts)
        && one.ChamberReadings.SequenceEqual(other.ChamberReadings)
        && one.SoilMoistures.SequenceEqual(other.SoilMoistures)
        && one.ProbeCalibrations.SequenceEqual(other.ProbeCalibrations)
        && one.CanopyVisits.SequenceEqual(other.CanopyVisits)
        && Until(one, asOf).SequenceEqual(Until(other, asOf));

    /// <summary>Whether people were told the same at two moments, as far as it bears on a plan: no other publication, no set begun between, nothing said of one.</summary>
    public static bool AreSame(PublishedPlan? one, DateTimeOffset then, PublishedPlan? other, DateTimeOffset now) =>
        one?.Id == other?.Id && Said(one, then).SequenceEqual(Said(other, now));

    private static IEnumerable<(int Id, bool HasBegun, Guid? Entry)> Said(PublishedPlan? plan, DateTimeOffset at) =>
        (plan?.Sets ?? []).OrderBy(s => s.Id).Select(s => (s.Id, s.Start <= at, s.Confirmation?.EntryId));

    private static IEnumerable<AppliedWater> Until(EstateContents contents, DateTimeOffset asOf) =>
        contents.AppliedWaters.Where(a => a.StartedAt <= asOf);
}
