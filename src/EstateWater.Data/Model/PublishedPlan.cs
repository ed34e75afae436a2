namespace EstateWater.Data.Model;

/// <summary>A plan that the manager published, kept as it was computed.</summary>
public sealed class PublishedPlan
{
    public int Id { get; init; }

    /// <summary>The moment the plan looks from.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>When it was published.</summary>
    public required DateTimeOffset PublishedAt { get; init; }

    public required string PublishedBy { get; init; }

    /// <summary>What the manager said to the irrigators.</summary>
    public string? Note { get; init; }

    /// <summary>The whole plan as the command line would print it.</summary>
    public required string PlanJson { get; init; }

    /// <summary>When it was taken back, so that the plan before it stands again; <see langword="null"/> while it stands.</summary>
    public DateTimeOffset? WithdrawnAt { get; set; }

    /// <summary>Who took it back.</summary>
    public string? WithdrawnBy { get; set; }

    public List<PublishedSet> Sets { get; init; } = [];
}

/// <summary>One set of a published plan: a valve, open from then till then.</summary>
public sealed class PublishedSet
{
    public int Id { get; init; }

    public int PlanId { get; init; }

    public required string ValveCode { get; init; }

    public required string SourceCode { get; init; }

    public required DateTimeOffset Start { get; init; }

    public required DateTimeOffset End { get; init; }

    /// <summary>[h]</summary>
    public required double Hours { get; init; }

    /// <summary>[m³/h]</summary>
    public required double FlowM3PerH { get; init; }

    /// <summary>All that was said of it, the first entry and its corrections.</summary>
    public List<SetConfirmation> Confirmations { get; init; } = [];

    /// <summary>What counts: the entry that no other replaces; <see langword="null"/> until someone said something.</summary>
    public SetConfirmation? Confirmation => Confirmations.Find(entry => !Confirmations.Exists(other => other.Replaces == entry.EntryId));
}
