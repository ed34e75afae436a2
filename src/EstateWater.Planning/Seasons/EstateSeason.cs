using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>The rest of the season of every source that has an allocation.</summary>
internal static class EstateSeason
{
    public static IReadOnlyDictionary<string, SourceSeason> Of(FittedEstate estate, CancellationToken cancellation) =>
        estate.Request.Sources.Where(s => s.SeasonAllocationM3 is not null).ToDictionary(
            source => source.Code,
            source => SourceSeason.Find(estate.LeftM3(source)!.Value, BlocksByValve(estate, source.Code, cancellation), estate.Days, cancellation));

    /// <summary>The blocks of a source, by valve, from today to their last watering.</summary>
    public static IReadOnlyList<IReadOnlyList<BlockSeason>> BlocksByValve(FittedEstate estate, string source, CancellationToken cancellation)
    {
        var courses = estate.Courses.Where(c => c.State.Valve.SourceCode == source).ToList();
        var daysLeft = courses.Select(c => BlockSeason.DaysLeft(c.State, estate.Today)).ToList();
        var weather = courses.Select(c => c.State.Block.StationCode).Distinct()
            .ToDictionary(code => code, code => SeasonWeather.Of(estate.Weather[code], daysLeft.Max()));
        var blocks = new BlockSeason[courses.Count];
        Parallel.For(0, courses.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
            blocks[i] = new BlockSeason(courses[i], weather[courses[i].State.Block.StationCode], estate.Today, daysLeft[i]));
        return [.. blocks.GroupBy(b => b.Block.ValveCode).OrderBy(v => v.Key, StringComparer.Ordinal).Select(v => v.ToList())];
    }
}
