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

    /// <summary>What the irrigator said of it; <see langword="null"/> until then.</summary>
    public SetConfirmation? Confirmation { get; set; }
}

/// <summary>What an irrigator said was really done. The first entry with an id counts; a repeat changes nothing.</summary>
public sealed class SetConfirmation
{
    public int Id { get; init; }

    /// <summary>Made on the phone, unique: the same entry sent twice is stored once.</summary>
    public required Guid EntryId { get; init; }

    public required int SetId { get; init; }

    /// <summary>Hours really run; 0 when it could not be done. [h]</summary>
    public required double Hours { get; init; }

    /// <summary>[m³]</summary>
    public double? MeterM3 { get; init; }

    public required string ConfirmedBy { get; init; }

    public string? Note { get; init; }

    /// <summary>The phone's clock when it was entered.</summary>
    public required DateTimeOffset EnteredAt { get; init; }

    /// <summary>The server's clock when it arrived.</summary>
    public required DateTimeOffset ReceivedAt { get; init; }

    /// <summary>The applied-water row that it made; <see langword="null"/> for zero hours.</summary>
    public int? AppliedWaterId { get; init; }
}
