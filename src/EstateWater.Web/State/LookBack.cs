using EstateWater.Planning.Accuracy;

namespace EstateWater.Web.State;

/// <summary>How far holding past outlooks against the readings has come.</summary>
public enum LookBackPhase
{
    /// <summary>Nobody asked yet.</summary>
    NotAsked,

    /// <summary>The work goes on in the background.</summary>
    Working,

    /// <summary>The report is there.</summary>
    Known,

    /// <summary>Someone stopped the work; it waits to be started again.</summary>
    Stopped,

    /// <summary>The work failed; it waits to be started again.</summary>
    Failed,
}

/// <summary>What is known of past outlooks at one moment. Never changed.</summary>
/// <param name="Phase">How far the work has come.</param>
/// <param name="Progress">Mornings done; null until they are counted.</param>
/// <param name="Report">The last report that was finished: while newer data are worked on, the one before.</param>
/// <param name="AsOf">The moment that report looked back from; null without one.</param>
/// <param name="Problem">What failed; null unless it did.</param>
public sealed record LookBack(LookBackPhase Phase, HindcastProgress? Progress = null, AccuracyReport? Report = null, DateTimeOffset? AsOf = null, string? Problem = null)
{
    /// <summary>Whether the work goes on.</summary>
    public bool IsWorking => Phase == LookBackPhase.Working;
}
