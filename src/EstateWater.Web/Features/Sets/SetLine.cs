namespace EstateWater.Web.Features.Sets;

/// <summary>A published set as the irrigator reads it.</summary>
public sealed record SetLine
{
    /// <summary>Its number in the store.</summary>
    public required int SetId { get; init; }

    /// <summary>The valve to open.</summary>
    public required string Valve { get; init; }

    /// <summary>The source that feeds it.</summary>
    public required string Source { get; init; }

    /// <summary>Blocks that get the water: code, with the name where there is one.</summary>
    public required IReadOnlyList<string> Blocks { get; init; }

    /// <summary>Opens, estate time.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>Closes, estate time.</summary>
    public required DateTimeOffset End { get; init; }

    /// <summary>[h]</summary>
    public required double Hours { get; init; }

    /// <summary>[m³/h]</summary>
    public required double FlowM3PerH { get; init; }

    /// <summary>The day on which its night begins.</summary>
    public required DateOnly Night { get; init; }

    /// <summary>What was really done; null until someone said so.</summary>
    public ConfirmedHours? Confirmed { get; init; }
}

/// <summary>What the irrigator said of a set.</summary>
/// <param name="Hours">Hours really run; 0 when it could not be done. [h]</param>
/// <param name="MeterM3">Meter difference; null when not read. [m³]</param>
/// <param name="By">Who.</param>
/// <param name="Note">Why not, or a remark.</param>
/// <param name="At">The phone's clock when it was entered, estate time.</param>
public sealed record ConfirmedHours(double Hours, double? MeterM3, string By, string? Note, DateTimeOffset At)
{
    /// <summary>In words: 6 h and 171 m³ by Ana, 07:10.</summary>
    public string Words
    {
        get
        {
            var run = Hours == 0 ? "could not run" : FormattableString.Invariant($"{Hours:0.##} h");
            var meter = MeterM3 is { } m3 ? FormattableString.Invariant($", meter {m3:0.#} m³") : "";
            var note = string.IsNullOrWhiteSpace(Note) ? "" : $": {Note}";
            return FormattableString.Invariant($"{run}{meter}{note} ({By}, {At:ddd HH:mm})");
        }
    }
}
