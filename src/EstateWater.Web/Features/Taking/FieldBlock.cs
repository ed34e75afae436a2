using System.Text.Json.Serialization;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Planning.Rounds;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Taking;

/// <summary>What a phone must know of a block to take readings in it without signal.</summary>
public sealed record FieldBlock
{
    /// <summary>Its code.</summary>
    public required string Code { get; init; }

    /// <summary>Code and name.</summary>
    public required string Name { get; init; }

    /// <summary>The measure of its target: leaf, stem, predawn.</summary>
    public required string Measure { get; init; }

    /// <summary>Leaves for the precision wanted.</summary>
    public required int Leaves { get; init; }

    /// <summary>How far its leaves usually lie apart. [bar]</summary>
    public required double SpreadBar { get; init; }

    /// <summary>Its soil tubes as they were read last.</summary>
    public required IReadOnlyList<FieldTube> Tubes { get; init; }

    /// <summary>Its last reading set; null where none exists.</summary>
    [JsonIgnore]
    public (double MeanBar, DateTimeOffset At)? Last { get; init; }

    /// <summary>Every block, by code.</summary>
    /// <param name="snapshot">The estate.</param>
    /// <param name="round">Today's round, which says how many leaves its blocks need; null while there is none.</param>
    public static IReadOnlyList<FieldBlock> Of(EstateSnapshot snapshot, RoundPlan? round)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var plans = snapshot.Plan.Blocks.ToDictionary(p => p.Block);
        var stops = round?.Stops.ToDictionary(s => s.Block) ?? [];
        var halfWidthMpa = (round?.Settings ?? new RoundSettings()).HalfWidthMpa;
        var tubes = snapshot.Contents.SoilMoistures.ToLookup(m => m.BlockCode);
        return [.. snapshot.Contents.Blocks.OrderBy(b => b.Code, StringComparer.Ordinal).Select(block =>
        {
            var plan = plans.GetValueOrDefault(block.Code);
            var measure = plan?.Measure ?? WaterPotentialMeasure.Leaf;
            var usual = UsualLeaves.Of([], measure, halfWidthMpa);
            var stop = stops.GetValueOrDefault(block.Code);
            return new FieldBlock
            {
                Code = block.Code,
                Name = block.Name is { Length: > 0 } name && name != block.Code ? $"{block.Code} {name}" : block.Code,
                Measure = measure.ToString().ToLowerInvariant(),
                Leaves = stop?.Leaves ?? usual.Leaves,
                SpreadBar = stop?.SpreadBar ?? usual.SpreadMpa * Conversions.BarPerMegapascal,
                Tubes = FieldTube.Of(tubes[block.Code]),
                Last = plan?.Latest is { } last ? (last.MeanBar, TimeZoneInfo.ConvertTime(last.TakenAt, snapshot.TimeZone)) : null,
            };
        })];
    }
}

/// <summary>A soil tube with the depths at which it was read last.</summary>
/// <param name="Tube">Its name.</param>
/// <param name="DepthsCm">From the top down. [cm]</param>
/// <param name="Counts">Whether the probe shows counts rather than water content.</param>
public sealed record FieldTube(string Tube, IReadOnlyList<double> DepthsCm, bool Counts)
{
    /// <summary>The tubes of a block, by name.</summary>
    public static IReadOnlyList<FieldTube> Of(IEnumerable<SoilMoisture> moistures) =>
    [
        .. moistures
            .GroupBy(m => m.Tube)
            .OrderBy(tube => tube.Key, StringComparer.Ordinal)
            .Select(tube => tube.GroupBy(m => m.Date).MaxBy(day => day.Key)!)
            .Select(day => new FieldTube(day.First().Tube, [.. day.Select(m => m.DepthCm).Order()], day.Any(m => m.Count is not null))),
    ];
}
