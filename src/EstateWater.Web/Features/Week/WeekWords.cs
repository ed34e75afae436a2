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
            return "No better packing of these hours exists: this one is proven best.";
        }

        // Rounded up, so that the sentence stays true.
        var gap = units.Tell(Math.Ceiling(packing.GapPct * 10) / 10, "0.#");
        return $"At most {gap} % from the best possible packing; better may exist but was not found in the time given.";
    }
}
