using System.Globalization;
using EstateWater.Planning;

namespace EstateWater.Web.Features.Week;

/// <summary>Numbers and times of the week page as people read them.</summary>
public static class WeekWords
{
    /// <summary>Tension: 13.2 bar.</summary>
    public static string Bar(double bar) => bar.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>Volume in whole cubic metres, thousands set apart by a narrow space: 1 240 m³.</summary>
    public static string CubicMetres(double m3) =>
        Math.Round(m3).ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202F') + "\u00A0m³";

    /// <summary>Flow: 28.4 m³/h.</summary>
    public static string Flow(double m3PerH) => m3PerH.ToString("0.#", CultureInfo.InvariantCulture) + "\u00A0m³/h";

    /// <summary>A day: Tue 21 Jan.</summary>
    public static string Day(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

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
