namespace EstateWater.Data.Model;

/// <summary>
/// What an irrigator said was really done. The first entry with an id counts; a repeat changes nothing. A correction is an entry that
/// names the one it replaces: both stay, and only the last counts.
/// </summary>
public sealed class SetConfirmation
{
    public int Id { get; init; }

    /// <summary>Made on the phone, unique: the same entry sent twice is stored once.</summary>
    public required Guid EntryId { get; init; }

    public required int SetId { get; init; }

    /// <summary>The entry that this one corrects; <see langword="null"/> for a set's first.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>When the valve was really opened; as planned where nobody said otherwise.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Hours really run; 0 when it could not be done. [h]</summary>
    public required double Hours { get; init; }

    /// <summary>Meter difference. [m³]</summary>
    public double? MeterM3 { get; init; }

    /// <summary>What the meter showed before. [m³]</summary>
    public double? MeterBeforeM3 { get; init; }

    /// <summary>What the meter showed after. [m³]</summary>
    public double? MeterAfterM3 { get; init; }

    /// <summary>Why it could not be done; <see langword="null"/> when it was.</summary>
    public NotRunReason? NotRun { get; init; }

    public required string ConfirmedBy { get; init; }

    public string? Note { get; init; }

    /// <summary>The phone's clock when it was entered.</summary>
    public required DateTimeOffset EnteredAt { get; init; }

    /// <summary>The server's clock when it arrived.</summary>
    public required DateTimeOffset ReceivedAt { get; init; }

    /// <summary>The applied-water row that it stands for; <see langword="null"/> for zero hours and for an entry that was replaced.</summary>
    public int? AppliedWaterId { get; set; }
}

/// <summary>Why a set could not be run.</summary>
public enum NotRunReason
{
    PumpDown,
    ValveBroken,
    PipeBurst,
    NoPower,
    Other,
}

/// <summary>A photo that an irrigator sent with an entry: one an entry.</summary>
public sealed class SetPhoto
{
    public int Id { get; init; }

    public required int ConfirmationId { get; init; }

    /// <summary>The picture, JPEG.</summary>
    public required byte[] Jpeg { get; init; }

    public required DateTimeOffset ReceivedAt { get; init; }
}
