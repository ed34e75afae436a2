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
            Words(season, plannedM3, kept));
    }

    private static string Words(SourceSeason season, double plannedM3, double keptM3)
    {
        if (season.LeftM3 <= 0)
        {
            return Wording.Say($"Nothing is left; the rest of the season would use {season.Wanted.TotalM3:#,0} m³ as the blocks now stand.");
        }

        var wanted = Wording.Say($"Left {season.LeftM3:#,0} m³; the rest of the season would use {season.Wanted.TotalM3:#,0} m³ as the blocks now stand");
        if (!season.IsShort)
        {
            return $"{wanted}: enough.";
        }

        if (season.PricePerMm <= 0)
        {
            return $"{wanted}: it will run out, and keeping some of it now would not spare more than it costs.";
        }

        var kept = keptM3 >= 0.5
            ? Wording.Say($"{keptM3:#,0} m³ are kept for ripening")
            : Wording.Say($"{Math.Max(0, season.LeftM3 - plannedM3):#,0} m³ are kept for later weeks");
        return $"{wanted}, so {kept} and {Losing(season)}.";
    }

    private static string Losing(SourceSeason season) => season.LosingPriorities.Count == 0
        ? "all blocks carry the loss alike"
        : $"the blocks of priority {string.Join(" and ", season.LosingPriorities)} carry the loss";
}
