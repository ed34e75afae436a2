using System.Globalization;
using EstateWater.Planning;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>Words of the week page beside those every page shares.</summary>
public static class WeekWords
{
    /// <summary>A count with its noun: 1 set, 3 sets.</summary>
    public static string Count(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");

    /// <summary>How far the sets may be from the best possible ones.</summary>
    public static string Packing(PackingQuality packing, UnitChoice units)
    {
        if (packing.Optimal)
        {
            return "These hours cannot be fitted into the nights any better.";
        }

        // Rounded up, so that the sentence stays true.
        var better = units.Tell(Math.Ceiling(10 * 100 * packing.GapPct / (100 - packing.GapPct)) / 10, "0.#");
        return $"No better way to fit these hours into the nights was found; one that is up to {better} % better may exist.";
    }
}
