using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>The rest of the season of every source that has an allocation.</summary>
internal static class EstateSeason
{
    public static IReadOnlyDictionary<string, SourceSeason> Of(FittedEstate estate, CancellationToken cancellation)
    {
        var limited = estate.Request.Sources.Where(s => s.SeasonAllocationM3 is not null).ToDictionary(s => s.Code);
                var courses = estate.Courses.Where(c => limited.ContainsKey(c.State.Valve.SourceCode)).ToList();
        var blocks = Blocks(estate, courses, cancellation);
        return limited.Keys.ToDictionary(
            code => code,
            code => SourceSeason.Find(
                estate.LeftM3(limited[code])!.Value,
                [.. estate.Valves.Where(v => v.SourceCode == code && v.Blocks.Count > 0)
                    .Select(v => new ValveSeason([.. blocks.Where(b => b.Block.ValveCode == v.Code)], estate.Days))],
                cancellation));
    }

    private static BlockSeason[] Blocks(FittedEstate estate, List<BlockCourse> courses, CancellationToken cancellation)
    {
        var daysLeft = courses.Select(c => BlockSeason.DaysLeft(c.State, estate.Today)).ToList();
        var weather = courses.Select(c => c.State.Block.StationCode).Distinct()
            .ToDictionary(code => code, code => SeasonWeather.Of(estate.Weather[code], daysLeft.DefaultIfEmpty(0).Max()));
        var blocks = new BlockSeason[courses.Count];
        Parallel.For(0, courses.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
            blocks[i] = new BlockSeason(courses[i], weather[courses[i].State.Block.StationCode], estate.Today, daysLeft[i]));
        return blocks;
    }
}
