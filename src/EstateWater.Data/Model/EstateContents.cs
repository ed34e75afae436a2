namespace EstateWater.Data.Model;

/// <summary>Everything an estate knows, as an estate folder holds it. Read from a folder or from the store; each row appears once.</summary>
public sealed record EstateContents
{
    public required Estate Estate { get; init; }

    public IReadOnlyList<Station> Stations { get; init; } = [];

    public IReadOnlyList<WaterSource> Sources { get; init; } = [];

    public IReadOnlyList<Valve> Valves { get; init; } = [];

    public required IReadOnlyList<Block> Blocks { get; init; }

    public IReadOnlyList<StageObservation> Stages { get; init; } = [];

    public IReadOnlyList<Target> Targets { get; init; } = [];

    public IReadOnlyList<WeatherDay> Weather { get; init; } = [];

    public IReadOnlyList<ForecastDay> Forecasts { get; init; } = [];

    public IReadOnlyList<ChamberReading> ChamberReadings { get; init; } = [];

    public IReadOnlyList<SoilMoisture> SoilMoistures { get; init; } = [];

    public IReadOnlyList<ProbeCalibration> ProbeCalibrations { get; init; } = [];

    public IReadOnlyList<CanopyVisit> CanopyVisits { get; init; } = [];

    public IReadOnlyList<AppliedWater> AppliedWaters { get; init; } = [];
}
