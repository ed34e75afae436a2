using EstateWater.Agronomy.Units;
using EstateWater.Planning.Seasons;

namespace EstateWater.Planning.Reasons;

/// <summary>Says of a source how its season's water is expected to last.</summary>
internal static class SeasonWords
{
    public static SeasonWater Of(SourceSeason season, double plannedM3)
    {
        var kept = Math.Max(0, Math.Min(season.LeftM3 - plannedM3, season.Expected.RipeningLaterM3));
        return new SeasonWater(
            Math.Round(season.Wanted.TotalM3, 1),
            Math.Round(season.Expected.TotalM3, 1),
            Math.Round(kept, 1),
            season.PricePerMm,
            Words(season, plannedM3, kept))
        {
            IsShort = season.IsShort,
        };
    }

    private static Sentence Words(SourceSeason season, double plannedM3, double keptM3)
    {
        if (season.LeftM3 <= 0)
        {
            return Sentence.Of($"Nothing is left; the rest of the season would use {Wording.Volume(season.Wanted.TotalM3)} as the blocks now stand.");
        }

        var wanted = Sentence.Of($"Left {Wording.Volume(season.LeftM3)}; the rest of the season would use {Wording.Volume(season.Wanted.TotalM3)} as the blocks now stand");
        if (!season.IsShort)
        {
            return Sentence.Of($"{wanted}: enough.");
        }

        if (season.PricePerMm <= 0)
        {
            return Sentence.Of($"{wanted}: it will run out before harvest, and holding some back now is not expected to help the blocks.");
        }

        var later = season.LeftM3 - plannedM3;
        var kept = (keptM3, later) switch
        {
            ( >= 0.5, _) => Sentence.Of($"{Wording.Volume(keptM3)} are kept for ripening"),
            (_, >= 0.5) => Sentence.Of($"{Wording.Volume(later)} are kept for later weeks"),
            _ => "all of it goes into these nights, where it spares most,",
        };
        return Sentence.Of($"{wanted}, so {kept} and {Losing(season)}.");
    }

    private static string Losing(SourceSeason season) => season.LosingPriorities.Count == 0
        ? "all blocks carry the loss alike"
        : $"the blocks of priority {string.Join(" and ", season.LosingPriorities)} carry the loss";
}
