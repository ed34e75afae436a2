using System.Globalization;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;

namespace EstateWater.Benchmarks;

/// <summary>An estate laid out again and again, each time under fresh codes and beside the last, until it has enough blocks.</summary>
internal static class WideEstate
{
    private const int Across = 5;

    /// <summary>Writes the folder; gives the codes of its blocks.</summary>
    public static IReadOnlyList<string> Write(string from, string to, int blocks)
    {
        var wide = Of(Read(from), blocks);
        EstateFolder.Write(wide, to);
        return [.. wide.Blocks.Select(b => b.Code)];
    }

    /// <summary>The estate in a folder.</summary>
    public static EstateContents Read(string folder)
    {
        var reading = EstateFolder.Read(folder);
        return reading.Contents ?? throw new InvalidOperationException($"{folder}:\n{string.Join('\n', reading.Defects)}");
    }

    /// <summary>The estate laid out until it has so many blocks.</summary>
    public static EstateContents Of(EstateContents one, int blocks)
    {
        var extent = new Envelope();
        one.Blocks.ToList().ForEach(b => extent.ExpandToInclude(b.Outline.EnvelopeInternal));
        var tiles = Enumerable.Range(0, (blocks + one.Blocks.Count - 1) / one.Blocks.Count)
            .Select(i => new Tile(one, i, 1.1 * extent.Width * (i % Across), 1.1 * extent.Height * (i / Across)))
            .ToList();
        var kept = tiles.SelectMany(t => t.Blocks).Take(blocks).ToList();
        var codes = kept.Select(b => b.Code).ToHashSet();
        return one with
        {
            Blocks = kept,
            Sources = [.. tiles.SelectMany(t => t.Sources)],
            Valves = [.. tiles.SelectMany(t => t.Valves)],
            Stages = [.. tiles.SelectMany(t => t.Stages).Where(s => codes.Contains(s.BlockCode))],
            Targets = [.. one.Targets.Where(t => t.BlockCode is null), .. tiles.SelectMany(t => t.Targets).Where(t => codes.Contains(t.BlockCode!))],
            ChamberReadings = [.. tiles.SelectMany(t => t.Readings).Where(r => codes.Contains(r.BlockCode))],
            SoilMoistures = [.. tiles.SelectMany(t => t.Soil).Where(s => codes.Contains(s.BlockCode))],
            ProbeCalibrations = [.. one.ProbeCalibrations.Where(c => c.BlockCode is null), .. tiles.SelectMany(t => t.Calibrations).Where(c => codes.Contains(c.BlockCode!))],
            CanopyVisits = [.. tiles.SelectMany(t => t.Canopy).Where(c => codes.Contains(c.BlockCode))],
            AppliedWaters = [.. tiles.SelectMany(t => t.Applied)],
        };
    }

    private sealed record Tile(EstateContents One, int Number, double EastDegrees, double NorthDegrees)
    {
        public IEnumerable<Block> Blocks => One.Blocks.Select(b => b with
        {
            Code = Code(b.Code),
            ValveCode = Code(b.ValveCode),
            Outline = AffineTransformation.TranslationInstance(EastDegrees, NorthDegrees).Transform(b.Outline),
        });

        public IEnumerable<WaterSource> Sources => One.Sources.Select(s => s with { Code = Code(s.Code) });

        public IEnumerable<Valve> Valves => One.Valves.Select(v => new Valve { Code = Code(v.Code), SourceCode = Code(v.SourceCode) });

        public IEnumerable<StageObservation> Stages => One.Stages.Select(s => s with { BlockCode = Code(s.BlockCode) });

        public IEnumerable<Target> Targets => One.Targets.Where(t => t.BlockCode is not null).Select(t => t with { BlockCode = Code(t.BlockCode!) });

        public IEnumerable<ChamberReading> Readings => One.ChamberReadings.Select(r => r with { BlockCode = Code(r.BlockCode) });

        public IEnumerable<SoilMoisture> Soil => One.SoilMoistures.Select(s => s with { BlockCode = Code(s.BlockCode) });

        public IEnumerable<ProbeCalibration> Calibrations => One.ProbeCalibrations.Where(c => c.BlockCode is not null).Select(c => c with { BlockCode = Code(c.BlockCode!) });

        public IEnumerable<CanopyVisit> Canopy => One.CanopyVisits.Select(c => c with { BlockCode = Code(c.BlockCode) });

        public IEnumerable<AppliedWater> Applied => One.AppliedWaters.Select(a => a with { ValveCode = Code(a.ValveCode) });

        private string Code(string code) => string.Create(CultureInfo.InvariantCulture, $"{code}-{Number:00}");
    }
}
