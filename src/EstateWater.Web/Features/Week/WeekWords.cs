using System.Globalization;
using EstateWater.Planning;

namespace EstateWater.Web.Features.Week;

/// <summary>Words of the week page beside those every page shares.</summary>
public static class WeekWords
{
    /// <summary>Flow: 28.4 m³/h.</summary>
    public static string Flow(double m3PerH) => m3PerH.ToString("0.#", CultureInfo.InvariantCulture) + "\u00A0m³/h";

    /// <summary>A clock time: 20:00.</summary>
    public static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A day and a clock time: Tue 21 Jan 20:00.</summary>
    public static string DayClock(DateTimeOffset at) => at.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A count with its noun: 1 set, 3 sets.</summary>
    public static string Count(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");

    /// <summary>How far the sets may be from the best possible ones.</summary>
    public static string Packing(PackingQuality packing)
    {
        if (packing.Optimal)
        {
            return "No better packing of these hours exists: this one is proven best.";
        }

        // Rounded up, so that the sentence stays true.
        var gap = (Math.Ceiling(packing.GapPct * 10) / 10).ToString("0.#", CultureInfo.InvariantCulture);
        return $"At most {gap} % from the best possible packing; better may exist but was not found in the time given.";
    }
}
