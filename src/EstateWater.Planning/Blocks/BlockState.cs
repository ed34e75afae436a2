using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning.Blocks;

/// <summary>A block with everything derived from its observations before the fit.</summary>
internal sealed class BlockState
{
    // Share of the root zone under drip where nobody declared it: the middle of 0.3–0.4 (Allen et al. 1998, Table 20).
    private const double UsualWettedFraction = 0.35;

    // Drip loses little between the meter and the soil; common practice, no published source.
    private const double EntersSoil = 0.97;

    public BlockState(PlanBlock block, ValveWater valve, StationWeather weather, SeasonSpan season, DateOnly today, TimeZoneInfo zone)
    {
        Block = block;
        Valve = valve;
        Stages = new GrowthStageProjection(block.LatitudeDegrees, block.Stages.Select(s => (s.Date, s.ElStage)), weather.DailyMeanC);
        Sets = ReadingSets.Of(block, zone, weather.VpdKpaAt);
        var applied = valve.AppliedMm(block);
        Evidence = new BlockEvidence
        {
            Code = block.Code,
            Declared = new BlockDeclaration(
                block.AvailableWaterMmPerM * block.RootDepthM,
                block.AvailableWaterMmPerM / 1000,
                block.WettedFraction ?? UsualWettedFraction,
                EntersSoil),
            Season = Forcing(weather.Season, applied, today) ?? Empty(today),
            LastSeason = Forcing(weather.LastSeason, applied, season.First.AddDays(-1)),
            Tensions = [.. Sets.Select(SetEvidence.Of)],
            Soil = [.. Profiles(block)],
        };
    }

    public PlanBlock Block { get; }

    public ValveWater Valve { get; }

    public GrowthStageProjection Stages { get; }

    public IReadOnlyList<ReadingSet> Sets { get; }

    public BlockEvidence Evidence { get; }

    /// <summary>With how far the vines of its last set may lie from the block.</summary>
    public BlockEvidence EvidenceWith(VineSpread vines)
    {
        if (Sets.Count == 0)
        {
            return Evidence;
        }

        var read = Sets[^1].Leaves.Select(l => (l.Group, l.Vine)).Distinct().ToList();
        return Evidence with { VinesMpa = vines.OfMeanMpa(read.Count, read.Select(v => v.Group).Distinct().Count()) };
    }

    /// <summary>Share of the ground shaded at solar noon from today on, as the visits up to today let expect.</summary>
    public double[] ShadedAhead(DateOnly today, int days) => ShadeCourse.Of(Block, Stages, today, days, today);

    /// <summary>Mean water content over the root depth, by day, over all tubes read that day.</summary>
    private static IEnumerable<SoilEvidence> Profiles(PlanBlock block) => block.SoilProfiles
        .GroupBy(p => p.Date)
        .OrderBy(day => day.Key)
        .Select(day => (day.Key, Means: day
            .Select(p => p.Depths.Where(d => d.DepthM <= block.RootDepthM + 0.01).Select(d => d.WaterContentM3PerM3).ToList())
            .Where(depths => depths.Count > 0)
            .Select(depths => depths.Average())
            .ToList()))
        .Where(day => day.Means.Count > 0)
        .Select(day => new SoilEvidence(day.Key, day.Means.Average()));

    private SeasonForcing? Forcing(SeasonDrive? drive, IReadOnlyDictionary<DateOnly, double> applied, DateOnly until) =>
        drive is null
            ? null
            : new SeasonForcing
            {
                FirstDay = drive.FirstDay,
                Et0Mm = drive.Et0Mm,
                VpdKpa = drive.VpdKpa,
                LightShare = drive.LightShare,
                RainMm = drive.RainMm,
                AppliedMm = [.. Enumerable.Range(0, drive.Et0Mm.Length).Select(day => applied.GetValueOrDefault(drive.FirstDay.AddDays(day)))],
                ShadedFraction = ShadeCourse.Of(Block, Stages, drive.FirstDay, drive.Et0Mm.Length, until),
            };

    // A new station: the outlook starts today from what a season starts with.
    private static SeasonForcing Empty(DateOnly today) => new()
    {
        FirstDay = today,
        Et0Mm = [],
        VpdKpa = [],
        LightShare = [],
        RainMm = [],
        AppliedMm = [],
        ShadedFraction = [],
    };
}
